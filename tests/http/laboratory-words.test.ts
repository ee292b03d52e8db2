import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import type { InputOf } from "../../shared/endpoint.ts";
import { verifyDeterminations } from "../../src/usecases/jobs/check-determinations.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { auditOf } from "../databases/read-back.ts";
import { lookedAt } from "./alder-bay.ts";
import { type Bedside, bedsideOf } from "./bedside.ts";
import { type Desk, openDesk } from "./desk.ts";

const { applyLaboratoryWord, chooseLaboratoryWords, listLaboratoryWords } = endpoints;
const { readDeterminations, readOrganismName, recordSigns, recordSpecimen } = endpoints;
type Word = InputOf<typeof chooseLaboratoryWords>["words"][number];

onEachDatabase("laboratory wordings", (fresh) => {
  let desk: Desk;
  let bed: Bedside;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    bed = bedsideOf(desk);
  });
  afterAll(() => desk?.close());

  const urine = { kind: "urine", method: "culture", status: "final", collectedAt: "2026-11-18T09:00" } as const;
  const record = async (name: string, organism: string, count = ">100000") => {
    const { patientId } = await bed.admit(name);
    await desk.ask(recordSigns, {
      ...{ patientId, day: "2026-11-18" as never },
      signs: [{ sign: "temperature", finding: "present", temperature: "38.6 °C" }],
    });
    const organisms = [{ name: organism, count }];
    return { patientId, ...(await desk.ask(recordSpecimen, { ...urine, patientId, organisms })) };
  };
  const outcomeOf = async (patientId: number) => {
    const { determinations } = await desk.ask(readDeterminations, { patientId, family: "us" });
    return determinations.map(({ outcome }) => outcome);
  };
  const stepOf = async (patientId: number) => {
    const { determinations } = await desk.ask(readDeterminations, { patientId, family: "us" });
    return determinations.map(({ derivation }) => derivation[0]?.status);
  };
  const facilityOf = async (id: number) =>
    (await desk.hospital.store.read(({ db }) => db.patient.findUniqueOrThrow({ where: { id } }))).facilityId;
  const choose = (...words: Word[]) => desk.ask(chooseLaboratoryWords, { words });
  const refused = async (...words: Word[]) => {
    const { status, errors } = await desk.refused(chooseLaboratoryWords, { words });
    return [status, ...errors.map(({ code, pointer }) => `${code} ${pointer}`)];
  };
  const word = async (wording: string) =>
    (await desk.ask(listLaboratoryWords, {})).words.find((one) => one.wording === wording);

  it("wait with the number of specimens, and a choice holds for specimens from then on", async () => {
    const before = await record("WAIT", "Strange Rod");
    expect(before.setAside).toEqual(["/organisms/0/name"]);
    expect(await outcomeOf(before.patientId)).toEqual(["cannot-tell"]);
    expect(await word("strange rod")).toMatchObject({ specimens: 1, choice: null, number: 0, recordedBy: null });
    expect(await choose({ column: "organism", wording: "STRANGE  ROD", choice: "mixed-flora" })).toEqual({ stored: 1 });
    const { people } = desk.hospital;
    expect(await word("strange rod")).toMatchObject({
      ...{ choice: "mixed-flora", number: 1, isForPast: false, recordedAt: lookedAt, recordedBy: people.prevention },
    });
    // What was chosen so already is no further version.
    expect(await choose({ column: "organism", wording: "strange rod", choice: "mixed-flora" })).toEqual({ stored: 0 });
    const after = await record("AFTER", "strange-rod");
    expect(after.setAside).toEqual([]);
    expect(await outcomeOf(after.patientId)).toEqual(["not-usable"]);
  });

  it("apply to past specimens after confirmation alone, and determine them again", { timeout: 120_000 }, async () => {
    const past = await record("PAST", "Old wording");
    expect(await stepOf(past.patientId)).toEqual(["cannot-tell"]);
    await choose({ column: "organism", wording: "Old wording", choice: "Klebsiella oxytoca" });
    const applied = await desk.ask(applyLaboratoryWord, { column: "organism", wording: "old  wording" });
    expect(applied).toMatchObject({ past: null, patients: 1 });
    expect(await stepOf(past.patientId)).toEqual(["held"]);
    expect(await word("old wording")).toMatchObject({ number: 2, isForPast: true, choice: "Klebsiella oxytoca" });
    const { store, people } = desk.hospital;
    const facilityId = await facilityOf(past.patientId);
    const actor = { personId: people.prevention, facilityId, roles: ["prevention" as const], wardIds: [] };
    const { differences } = await verifyDeterminations({ store, actor, now: lookedAt });
    expect(differences.filter(({ caseId }) => caseId === past.specimenId)).toEqual([]);
    const { status } = await desk.refused(applyLaboratoryWord, { column: "count", wording: "plenty" });
    expect(status).toBe(404);
  });

  it("of counts decide like a number on that side of the limit", async () => {
    await choose(
      { column: "count", wording: "Heavy growth", choice: "at-least-100000" },
      { column: "count", wording: "a few colonies", choice: "below-100000" },
    );
    const [heavy, few] = [
      await record("HEAVY", "Escherichia coli", "heavy  growth"),
      await record("FEW", "Escherichia coli", "A few colonies"),
    ];
    expect([heavy.setAside, few.setAside]).toEqual([[], []]);
    expect(await outcomeOf(few.patientId)).toEqual(["not-usable"]);
    expect(await stepOf(heavy.patientId)).toEqual(["held"]);
  });

  it("are refused by name where a table contradicts itself, the list or an earlier choice; nothing is stored", async () => {
    const one = { column: "organism", wording: "Table rod", choice: "bacterium" } as const;
    expect(await refused(one, { ...one, wording: "table-rod" })).toEqual([422, "word-repeated /words/1/wording"]);
    expect(await refused(one, { ...one, choice: "other" })).toEqual([409, "word-chosen-twice /words/1/wording"]);
    expect(await refused(one, { ...one, wording: "E. coli", choice: "yeast-or-mold" })).toEqual([
      ...[409, "word-read-already /words/1/wording"],
    ]);
    expect(await refused({ ...one, column: "count", wording: "10^5", choice: "below-100000" })).toEqual([
      ...[409, "word-read-already /words/0/wording"],
    ]);
    expect(await refused(one, { ...one, wording: "Other rod", choice: "fungus" })).toEqual([
      ...[422, "word-choice-unknown /words/1/choice"],
    ]);
    expect(await word("table rod")).toBeUndefined();
    await choose(one, { ...one, wording: "E. coli", choice: "Escherichia coli" });
    expect(await refused({ ...one, choice: "other" })).toEqual([409, "word-chosen-twice /words/0/wording"]);
    expect(await refused({ ...one, choice: "other", replaces: 0 })).toEqual([
      409,
      "word-chosen-twice /words/0/wording",
    ]);
    expect(await choose({ ...one, choice: "other", replaces: 1 })).toEqual({ stored: 1 });
    expect(await choose({ ...one, choice: null, replaces: 2 })).toEqual({ stored: 1 });
    expect(await word("table rod")).toMatchObject({ choice: null, number: 3 });
  });

  it("stay out of the audit trail, which has their numbers", async () => {
    const { patientId } = await bed.admit("TRAIL");
    const trail = await auditOf(desk.hospital.store, await facilityOf(patientId));
    expect(trail.map(({ action }) => action)).toEqual(expect.arrayContaining(["choose-words", "apply-word"]));
    expect(JSON.stringify(trail)).not.toMatch(/strange|old wording|table/i);
  });

  it("a name is read for the form, with what it may be meant to be", async () => {
    const read = (name: string) => desk.ask(readOrganismName, { name }, { person: "bedside" });
    expect(await read("Kleb pneumo")).toEqual({
      ...{ group: "bacterium", name: "Klebsiella pneumoniae", isOnList: true, proposal: null },
    });
    expect(await read("Strange rod")).toMatchObject({ group: "mixed-flora", isOnList: false });
    expect(await read("Escherchia coli")).toEqual({
      ...{ group: null, name: null, isOnList: false, proposal: "Escherichia coli" },
    });
  });
});
