import type { MessagePort } from "node:worker_threads";
import { Problem } from "../../../shared/problems.ts";
import type { HeavyAnswer, HeavyRead, HeavyWork } from "./heavy-work.ts";
import { type Back, Lane, type Sent } from "./lane.ts";

/** What a thread is asked to do. */
type Work =
  | { readonly read: HeavyRead }
  | { readonly make: Parameters<HeavyWork["make"]>[0]; readonly type: Parameters<HeavyWork["make"]>[1] };

/** What the threads are started with. */
export interface ThreadData {
  readonly databaseUrl: string;
  readonly browserPath: string | null;
  /** The version of the program. */
  readonly version: string;
}

/** Reads and files that may wait; each reader of a page asks for two or three reads. */
const most = { reads: 100, files: 20 };

/**
 * Does heavy work on two threads of `script`: one for reads, one for files, because a file takes many times as long as a
 * read. The thread of reads starts at once.
 */
export function heavyThreads(script: string, data: ThreadData): HeavyWork {
  const reads = new Lane({ script, data, most: most.reads });
  const files = new Lane({ script, data, most: most.files });
  const ask = <T>(to: Lane, work: Work) => to.ask(work) as Promise<T>;
  reads.warm();
  return {
    read: (asked) => ask<HeavyAnswer>(reads, { read: asked }),
    make: (make, type) => ask<Uint8Array>(files, { make, type }),
    close: async () => {
      await Promise.all([reads.close(), files.close()]);
    },
  };
}

/** Does what comes through the port, on the other side of {@link heavyThreads}. */
export function answerThread(port: MessagePort, heavy: HeavyWork): void {
  port.on("message", async ({ id, work }: Sent) => {
    port.postMessage(await backOf(id, work as Work, heavy));
  });
}

async function backOf(id: number, work: Work, heavy: HeavyWork): Promise<Back> {
  try {
    return { id, done: "read" in work ? await heavy.read(work.read) : await heavy.make(work.make, work.type) };
  } catch (error) {
    // An error of the class is not handed over as one.
    if (error instanceof Problem) return { id, faults: error.faults as readonly [Problem["faults"][0]] };
    return { id, error };
  }
}
