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

/** Reads and prints that may wait; each reader of a page asks for two or three reads. */
const most = { reads: 100, prints: 20 };

/**
 * Does heavy work on two threads of `script`: one for reads and workbooks, one for what is printed, which takes many times
 * as long. The thread of reads starts at once.
 */
export function heavyThreads(script: string, data: ThreadData): HeavyWork {
  const reads = new Lane({ script, data, most: most.reads });
  const prints = new Lane({ script, data, most: most.prints });
  const ask = <T>(to: Lane, work: Work) => to.ask(work) as Promise<T>;
  reads.warm();
  return {
    read: (asked) => ask<HeavyAnswer>(reads, { read: asked }),
    make: (make, type) => ask<Uint8Array>(type === "application/pdf" ? prints : reads, { make, type }),
    close: async () => {
      await Promise.all([reads.close(), prints.close()]);
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
    // Errors of classes are not handed over as such.
    if (error instanceof Problem) return { id, faults: error.faults as readonly [Problem["faults"][0]] };
    const { name, message, stack = message } = error instanceof Error ? error : new Error(String(error));
    return { id, error: { name, message, stack } };
  }
}
