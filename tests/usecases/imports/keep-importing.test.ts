import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../../shared/api/index.ts";
import { readSentFiles } from "../../../src/csv/sent-files.ts";
import { keepImporting } from "../../../src/usecases/imports/keep-importing.ts";
import { resumeImports } from "../../../src/usecases/imports/resume-imports.ts";
import { workOnImports } from "../../../src/usecases/imports/work-on-imports.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { lookedAt } from "../../http/alder-bay.ts";
import { type Desk, openDesk } from "../../http/desk.ts";

const { receiveImport, readImport, decideImport } = endpoints;

onEachDatabase("files that were sent", (database) => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk(await database());
  });
  afterAll(() => desk?.close());

  const send = async (files: { name: string; text: string }[]) => (await desk.ask(receiveImport, { files })).importId;

  it("are worked on by the service until it stops, step by step, and read anew after a break", async () => {
    const { store } = desk.hospital;
    const rows = Array.from({ length: 1200 }, (_, n) => `L-${n},LP-${n},4N,2026-11-10T08:00,2026-11-11T08:00`);
    const importId = await send([{ name: "moves.csv", text: ["stay,patient,ward,from,to", ...rows].join("\n") }]);
    const steps = { left: 3 };
    const onStep = () => {
      steps.left -= 1;
      if (steps.left === 0) throw new Error("the power failed");
    };
    const broken = workOnImports({ store, now: lookedAt, readFiles: readSentFiles, onStep });
    await expect(broken).rejects.toThrow("the power failed");
    const half = await desk.ask(readImport, { importId });
    expect(half.state).toBe("checking");
    expect(half.progress).toMatchObject({ total: 1200 });
    const errors: unknown[] = [];
    const keeping = keepImporting(store, {
      clock: () => lookedAt,
      readFiles: readSentFiles,
      onError: (error) => errors.push(error),
    });
    const until = async (state: string) =>
      expect.poll(async () => (await desk.ask(readImport, { importId })).state, { timeout: 30_000 }).toBe(state);
    await until("checked");
    expect((await desk.ask(readImport, { importId })).counts).toMatchObject({ waiting: 1200, refused: 0 });
    await desk.ask(decideImport, { importId, decision: "apply", setAside: false });
    await until("applied");
    expect((await desk.ask(readImport, { importId })).counts).toMatchObject({ accepted: 1200, waiting: 0 });
    await keeping.stop();
    expect(errors).toEqual([]);
  }, 120_000);

  it("are put back by a start and read anew, and a decision is carried through by it", async () => {
    const { store } = desk.hospital;
    const at = { store, now: lookedAt, readFiles: readSentFiles };
    const text = "stay,patient,ward,from,to\nR-1,RP-1,4N,2026-11-10T08:00,2026-11-11T08:00\n";
    const importId = await send([{ name: "moves.csv", text }]);
    const fail = () => {
      throw new Error("the power failed");
    };
    await expect(workOnImports({ ...at, onStep: fail })).rejects.toThrow("the power failed");
    expect(await resumeImports(at)).toEqual([]);
    expect((await desk.ask(readImport, { importId })).state).toBe("received");
    await workOnImports(at);
    expect(await resumeImports(at)).toEqual([]);
    expect((await desk.ask(readImport, { importId })).state).toBe("checked");
    await desk.ask(decideImport, { importId, decision: "apply", setAside: false });
    expect(await resumeImports(at)).toMatchObject([{ importId, state: "applied", accepted: 1 }]);
  });

  it("on which the work fails are tried a few times and then left, and do not hold up others", async () => {
    const { store } = desk.hospital;
    const bad = await send([{ name: "moves.csv", text: "bad" }]);
    const good = await send([{ name: "moves.csv", text: "stay,patient,ward,from\n" }]);
    const errors: unknown[] = [];
    const keeping = keepImporting(store, {
      clock: () => lookedAt,
      onError: (error) => errors.push(error),
      readFiles: (files, rules) => {
        if (files.some(({ text }) => text === "bad")) throw new Error("a fault of the program");
        return readSentFiles(files, rules);
      },
    });
    await expect.poll(() => errors.length, { timeout: 20_000 }).toBe(3);
    await expect.poll(async () => (await desk.ask(readImport, { importId: good })).state).toBe("checked");
    await new Promise((resolve) => setTimeout(resolve, 1000));
    await keeping.stop();
    expect(errors).toHaveLength(3);
    expect((await desk.ask(readImport, { importId: bad })).state).toBe("staging");
  }, 60_000);
});
