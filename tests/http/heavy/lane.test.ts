import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, describe, expect, it } from "vitest";
import { Problem } from "../../../shared/problems.ts";
import { Lane } from "../../../src/http/heavy/lane.ts";

const folder = mkdtempSync(join(tmpdir(), "dwell-lane-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const script = join(folder, "thread.mjs");
// Says what it does and on which thread; waits, refuses, fails or ends as it is told.
writeFileSync(
  script,
  `import { parentPort, threadId, workerData } from "node:worker_threads";
   let busy = false;
   parentPort.on("message", async ({ id, work }) => {
     if (work.exit) process.exit(work.exit);
     if (work.crash) throw new Error("out of memory");
     if (work.refuse) return parentPort.postMessage({ id, faults: [{ code: "not-found", pointer: "/month", detail: "None." }] });
     if (work.fail) return parentPort.postMessage({ id, error: { name: "TypeError", message: "a fault of the program", stack: "at thread.mjs" } });
     const overlaps = busy;
     busy = true;
     await new Promise((resolve) => setTimeout(resolve, work.ms ?? 0));
     busy = false;
     parentPort.postMessage({ id, done: { name: work.name, threadId, overlaps, data: workerData } });
   });`,
);

interface Done {
  readonly name: string;
  readonly threadId: number;
  readonly overlaps: boolean;
  readonly data: unknown;
}

describe("a lane", () => {
  let open: Lane;
  afterEach(() => open.close());
  const ask = (work: object) => open.ask(work) as Promise<Done>;

  it("does its work on a thread of its own, in order and one piece at a time", async () => {
    open = new Lane({ script, data: { version: "1" }, most: 10 });
    const done = await Promise.all(["a", "b", "c"].map((name, i) => ask({ name, ms: 30 - i * 10 })));
    expect(done.map(({ name }) => name)).toEqual(["a", "b", "c"]);
    expect(done.map(({ overlaps }) => overlaps)).toEqual([false, false, false]);
    expect(new Set(done.map(({ threadId }) => threadId)).size).toBe(1);
    expect(done[0]?.threadId).toBeGreaterThan(0);
    expect(done[0]?.data).toEqual({ version: "1" });
  });

  it("refuses what would wait behind too many, and takes work again when they are done", async () => {
    open = new Lane({ script, data: null, most: 2 });
    const taken = ["a", "b", "c"].map((name) => ask({ name, ms: 20 }));
    const refused = await ask({ name: "d" }).catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(Problem);
    expect((refused as Problem).code).toBe("service-busy");
    await Promise.all(taken);
    expect((await ask({ name: "e" })).name).toBe("e");
  });

  it("hands on what the work refuses, and what it fails with", async () => {
    open = new Lane({ script, data: null, most: 2 });
    const refused = await ask({ refuse: true }).catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(Problem);
    expect((refused as Problem).faults).toEqual([{ code: "not-found", pointer: "/month", detail: "None." }]);
    const failed = await ask({ fail: true }).catch((error: unknown) => error);
    expect(failed).toBeInstanceOf(Error);
    expect(failed).toMatchObject({ name: "TypeError", message: "a fault of the program", stack: "at thread.mjs" });
    expect((await ask({ name: "later" })).name).toBe("later");
  });

  it.each([{ exit: 3 }, { crash: true }])("starts its thread anew after one that ended with %j", async (end) => {
    open = new Lane({ script, data: null, most: 5 });
    const [before, lost, after] = await Promise.allSettled([ask({ name: "a" }), ask(end), ask({ name: "b" })]);
    expect([before?.status, lost?.status, after?.status]).toEqual(["fulfilled", "rejected", "fulfilled"]);
    const threads = [before, after].map((one) => (one?.status === "fulfilled" ? one.value.threadId : 0));
    expect(threads[1]).toBeGreaterThan(threads[0] ?? 0);
  });

  it("fails whatever waits when it is closed, and takes nothing more", async () => {
    open = new Lane({ script, data: null, most: 5 });
    const waiting = [ask({ name: "a", ms: 5000 }), ask({ name: "b" })];
    const outcomes = Promise.allSettled(waiting);
    await open.close();
    expect((await outcomes).map(({ status }) => status)).toEqual(["rejected", "rejected"]);
    await expect(ask({ name: "c" })).rejects.toThrow("being stopped");
  });
});
