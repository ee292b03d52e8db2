import { Worker } from "node:worker_threads";
import { type Fault, Problem, refuse } from "../../../shared/problems.ts";

/** Work that is sent to a thread, and what comes back. */
export interface Sent {
  readonly id: number;
  readonly work: unknown;
}
export type Back = { readonly id: number } & (
  | { readonly done: unknown }
  | { readonly faults: readonly [Fault, ...Fault[]] }
  /** A fault of the program, with the place at which it happened. */
  | { readonly error: { readonly name: string; readonly message: string; readonly stack: string } }
);

interface Waiting {
  readonly work: unknown;
  readonly resolve: (done: unknown) => void;
  readonly reject: (error: unknown) => void;
}

interface LaneOptions {
  /** The program of the thread, as JavaScript. */
  readonly script: string;
  /** What it is started with. */
  readonly data: unknown;
  /** How many pieces may wait, beside the one that is being done. */
  readonly most: number;
}

/**
 * A thread that does pieces of work one after another, in the order in which they came. It starts with the first piece,
 * and again after a piece that ended it.
 */
export class Lane {
  readonly #options: LaneOptions;
  readonly #queue: Waiting[] = [];
  #current: { readonly id: number; readonly waiting: Waiting } | null = null;
  #thread: Worker | null = null;
  #sent = 0;
  #isClosed = false;

  constructor(options: LaneOptions) {
    this.#options = options;
  }

  /** Refuses `service-busy` when too many wait. What the work refuses is refused here; else its error is thrown. */
  async ask(work: unknown): Promise<unknown> {
    const { most } = this.#options;
    if (this.#isClosed) throw new Error("the service is being stopped");
    if (this.#queue.length >= most) refuse("service-busy", `${most} others wait already.`);
    return new Promise((resolve, reject) => {
      this.#queue.push({ work, resolve, reject });
      this.#next();
    });
  }

  /** Starts the thread, so that the first piece need not wait for it. */
  warm(): Worker {
    this.#thread ??= this.#started();
    return this.#thread;
  }

  /** Ends the thread; whatever waits fails. */
  async close(): Promise<void> {
    this.#isClosed = true;
    const stopped = new Error("the service was stopped");
    for (const { reject } of this.#queue.splice(0)) reject(stopped);
    const thread = this.#thread;
    this.#thread = null;
    this.#settle(({ reject }) => reject(stopped));
    await thread?.terminate();
  }

  #started(): Worker {
    const { script, data } = this.#options;
    const thread = new Worker(script, { workerData: data });
    // An idle thread does not keep the process.
    thread.unref();
    thread.on("message", (back: Back) => {
      if (back.id === this.#current?.id) this.#settle((waiting) => answer(waiting, back));
    });
    const gone = (error: unknown) => {
      if (this.#thread !== thread) return;
      this.#thread = null;
      this.#settle(({ reject }) => reject(error));
    };
    thread.on("error", gone);
    thread.on("exit", (code) => gone(new Error(`the thread for large reports ended with code ${code}`)));
    return thread;
  }

  #settle(finish: (waiting: Waiting) => void): void {
    const done = this.#current?.waiting;
    this.#current = null;
    this.#thread?.unref();
    if (done) finish(done);
    this.#next();
  }

  #next(): void {
    const waiting = this.#current === null ? this.#queue.shift() : undefined;
    if (!waiting) return;
    const thread = this.warm();
    thread.ref();
    this.#current = { id: ++this.#sent, waiting };
    thread.postMessage({ id: this.#sent, work: waiting.work } satisfies Sent);
  }
}

function answer({ resolve, reject }: Waiting, back: Back): void {
  if ("done" in back) resolve(back.done);
  else if ("faults" in back) reject(new Problem(...back.faults));
  else reject(Object.assign(new Error(back.error.message), back.error));
}
