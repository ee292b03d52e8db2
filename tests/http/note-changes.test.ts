import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import type { Endpoint, InputOf } from "../../shared/endpoint.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { lookedAt } from "./alder-bay.ts";
import { type Bedside, bedsideOf } from "./bedside.ts";
import { type Desk, openDesk } from "./desk.ts";

const { confirmCatheter, correctNote, readCatheter, recordCareCheck, recordUrineOutput, reviewCatheter } = endpoints;
const { removeCatheter, voidCatheter, voidNote } = endpoints;
const reason = "Written down on the wrong line";

onEachDatabase("corrections of notes", (fresh) => {
  let desk: Desk;
  let bed: Bedside;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    bed = bedsideOf(desk);
  });
  afterAll(() => desk?.close());

  const at = "2026-11-17T09:00";
  const refused = async <E extends Endpoint>(endpoint: E, input: InputOf<E>) => {
    const { status, errors } = await desk.refused(endpoint, input);
    return [status, ...errors.map(({ code, pointer }) => `${code} ${pointer}`)];
  };
  const reviewed = async (name: string) => {
    const { catheterId } = await bed.withCatheter(name);
    const said = { catheterId, at, outcome: "keep" as const, indication: "perioperative", remark: "Until Friday" };
    return { catheterId, ...(await desk.ask(reviewCatheter, said, { person: "bedside" })) };
  };

  it("change what they name; what was said before and who wrote it first stay", async () => {
    const { catheterId, noteId } = await reviewed("CORRECT");
    const change = { noteId, at: "2026-11-17T08:00", outcome: "remove" as const, indication: null, remark: null };
    expect(await desk.tag(correctNote, { ...change, reason, seenVersion: 1 })).toBe('"2"');
    const { notes, corrections, version } = await desk.ask(readCatheter, { catheterId });
    const { bedside, prevention } = desk.hospital.people;
    expect(notes).toEqual([
      {
        ...{ noteId, catheterId, kind: "review", version: 2, voidReason: null, at: Date.UTC(2026, 10, 17, 13) },
        ...{ outcome: "remove", indication: null, remark: null, items: null, amountMl: null },
        ...{ writtenAt: lookedAt, writtenBy: bedside },
      },
    ]);
    const before = { at: "2026-11-17T14:00:00.000Z", outcome: "keep", indication: "perioperative" };
    expect(corrections).toMatchObject([
      { entry: `note ${noteId}`, version: 1, replacedBy: prevention, replacedAt: lookedAt, reason, before },
    ]);
    expect(version).toBe(1);
  });

  it("name fields of the note's own kind", async () => {
    const { catheterId, noteId } = await reviewed("FIELDS");
    const change = { noteId, reason, seenVersion: 1 };
    expect(await refused(correctNote, { ...change, amountMl: 300 })).toEqual([422, "field-of-another-note /amountMl"]);
    expect(await refused(correctNote, { ...change, amountMl: 300, items: {} })).toEqual([
      ...[422, "field-of-another-note /items", "field-of-another-note /amountMl"],
    ]);
    const seen = await desk.ask(confirmCatheter, { catheterId, at });
    expect(await refused(correctNote, { ...change, noteId: seen.noteId, remark: "Seen" })).toEqual([
      ...[422, "field-of-another-note /remark"],
    ]);
  });

  it("are checked as new notes are, all faults at once", async () => {
    const { catheterId, noteId } = await reviewed("CHECKS");
    const change = { noteId, reason, seenVersion: 1 };
    expect(await refused(correctNote, { ...change, at: "2026-11-16T08:59", indication: null })).toEqual([
      ...[409, "not-in-place /at", "indication-missing /indication"],
    ]);
    expect(await refused(correctNote, { ...change, outcome: "ask" })).toEqual([422, "field-unreadable /indication"]);
    expect(await refused(correctNote, { ...change, indication: "habit" })).toEqual([
      ...[422, "indication-unknown /indication"],
    ]);
    expect(await refused(correctNote, { ...change, at: "2026-11-20T10:06" })).toEqual([422, "in-the-future /at"]);
    const check = await desk.ask(recordCareCheck, { catheterId, at, items: { secured: "kept" } });
    const items = { secured: "broken", dusting: "kept" } as const;
    expect(await refused(correctNote, { ...change, noteId: check.noteId, items })).toEqual([
      ...[422, "item-unknown /items/dusting"],
    ]);
  });

  it("take unusual amounts once they are confirmed, and do not judge again what they leave alone", async () => {
    const { catheterId } = await bed.withCatheter("AMOUNT");
    const { noteId } = await desk.ask(recordUrineOutput, { catheterId, at, amountMl: 400 });
    const change = { noteId, amountMl: 4000, reason, seenVersion: 1 };
    expect(await refused(correctNote, change)).toEqual([422, "unusual-value /amountMl"]);
    const impossible = { ...change, amountMl: 40_000, confirm: ["/amountMl"] };
    expect(await refused(correctNote, impossible)).toEqual([422, "out-of-bounds /amountMl"]);
    await desk.ask(correctNote, { ...change, confirm: ["/amountMl"] });
    await desk.ask(correctNote, { noteId, at: "2026-11-17T09:30", reason, seenVersion: 2 });
    const { notes } = await desk.ask(readCatheter, { catheterId });
    expect(notes).toMatchObject([{ amountMl: 4000, at: Date.UTC(2026, 10, 17, 14, 30), version: 3 }]);
  });

  it("void them, once: they stay readable, and the catheter was not seen then", async () => {
    const { catheterId, noteId } = await reviewed("VOID");
    const removal = { catheterId, removedAt: "2026-11-17T08:00", seenVersion: 1 };
    expect(await refused(removeCatheter, removal)).toEqual([409, "seen-after-removal /removedAt"]);
    expect(await desk.tag(voidNote, { noteId, reason, seenVersion: 1 }, { person: "bedside" })).toBe('"2"');
    const story = await desk.ask(readCatheter, { catheterId });
    expect(story.lastSeenAt).toBe(null);
    expect(story.notes).toMatchObject([{ noteId, voidReason: reason, version: 2, outcome: "keep" }]);
    expect(story.corrections).toMatchObject([{ entry: `note ${noteId}`, version: 1, reason }]);
    const again = { noteId, reason, seenVersion: 2 };
    expect(await refused(voidNote, again)).toEqual([409, "entry-voided "]);
    expect(await refused(correctNote, { ...again, remark: "New" })).toEqual([409, "entry-voided "]);
    await desk.ask(removeCatheter, removal);
  });

  it("are refused once the catheter itself was voided", async () => {
    const { catheterId, noteId } = await reviewed("VOIDED-CATHETER");
    await desk.ask(voidCatheter, { catheterId, reason, seenVersion: 1 });
    const change = { noteId, remark: "New", reason, seenVersion: 1 };
    expect(await refused(correctNote, change)).toEqual([409, "entry-voided "]);
  });

  it.each([
    ["correctNote", { remark: "Until Monday", reason }],
    ["voidNote", { reason }],
  ] as const)("%s wants the version that was seen, and shows the note as it is by now", async (name, more) => {
    const { catheterId, noteId } = await reviewed(`STALE-${name}`);
    await desk.ask(correctNote, { noteId, remark: "Until Sunday", reason, seenVersion: 1 });
    const input = { noteId, ...more, seenVersion: 1 } as never;
    const stale = await desk.refused(endpoints[name], input);
    expect([stale.status, stale.code]).toEqual([412, "stale-version"]);
    const said = { remark: "Until Sunday", outcome: "keep", at: "2026-11-17T14:00:00.000Z" };
    expect(stale.current).toMatchObject({ noteId, catheterId, version: 2, ...said });
    const missing = await desk.refused(endpoints[name], input, { headers: { "if-match": "" } });
    expect([missing.status, missing.code]).toEqual([428, "version-missing"]);
  });
});
