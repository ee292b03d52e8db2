import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { day, month as monthText } from "../../shared/day.ts";
import type { ProblemDocument } from "../../shared/problem-document.ts";
import { acknowledgeHeader } from "../../shared/signed-changes.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type Desk, openDesk } from "./desk.ts";
import { workOn } from "./import-work.ts";
import { inputs } from "./inputs.ts";
import type { Subjects } from "./subjects.ts";

const { addWard, admitPatient, correctCatheter, decideImport, describeWard, dischargePatient } = endpoints;
const { dropImportLine, insertCatheter, listChangedMonths, mergeWards, readMonthFigures, readMonthSignatures } =
  endpoints;
const { readMonthDocument, readMonthFigureSheet, readMonthGaps } = endpoints;
const { readImport, receiveImport, removeCatheter, reviewCatheter, signMonth, correctStay, recordDailyCount } =
  endpoints;
const october = monthText.parse("2026-10");
const reason = "The chart says otherwise";

onEachDatabase("a change of a month that was signed", (fresh) => {
  let desk: Desk;
  let west: number;
  let first: { stayId: number; catheterId: number };
  let second: typeof first;

  /** From 10 October 08:00 to the 13th: 3 patient-days; with a catheter 2 catheter-days, of the censuses of the 11th and 12th. */
  async function stayOn(number: string, wardId: number): Promise<{ stayId: number; catheterId: number }> {
    const admission = { wardId, identifier: number, number, admittedAt: "2026-10-10T08:00", bed: "7" };
    const { stayId } = await desk.ask(admitPatient, admission);
    const insertion = inputs.insertCatheter({ stayId, at: "2026-10-10T09:00" } as Subjects);
    const { catheterId } = await desk.ask(insertCatheter, insertion);
    await desk.ask(removeCatheter, { catheterId, removedAt: "2026-10-12T09:00", seenVersion: 1 });
    await desk.ask(dischargePatient, { stayId, dischargedAt: "2026-10-13T10:00", seenVersion: 1 });
    return { stayId, catheterId };
  }

  async function sign(replaces = 0): Promise<void> {
    const { seen } = await desk.ask(readMonthFigures, { month: october });
    await desk.ask(signMonth, { month: october, seen, replaces, reason: replaces === 0 ? null : reason });
  }

  const changes = async (person: "prevention" | "bedside" | "manager" = "prevention") =>
    (await desk.ask(readMonthSignatures, { month: october }, { person })).changes;
  const days = ({ signed }: ProblemDocument) =>
    signed?.months.flatMap(({ figures }) =>
      figures.filter(({ figure }) => figure === "catheter_days").map((one) => [one.ward, one.before, one.after]),
    );

  beforeAll(async () => {
    desk = await openDesk(await fresh());
    const { wards } = desk.hospital;
    const observation = { name: "Observation", type: null, setting: "outpatient", beds: null, reason } as const;
    await desk.ask(describeWard, { ...observation, wardId: wards.OBS, fromDay: day.parse("2026-01-01") });
    const unit = { code: "3-E", name: "3-E", type: null, setting: "inpatient", beds: null } as const;
    west = (await desk.ask(addWard, { ...unit, openedDay: day.parse("2026-01-01") })).wardId;
    first = await stayOn("OCT-1", wards["3E"]);
    second = await stayOn("OCT-2", wards["4N"]);
    await stayOn("OCT-3", west);
    await sign();
  });
  afterAll(() => desk?.close());

  const late = () => ({ catheterId: first.catheterId, removedAt: "2026-10-11T09:00", reason, seenVersion: 2 });

  it("is refused with the figures before and after, and stored when these are acknowledged", async () => {
    const refused = await desk.refused(correctCatheter, late());
    expect([refused.status, refused.code]).toEqual([409, "changes-signed-month"]);
    // By hand: the census of the 12th is no catheter-day any more; 6 of the three units become 5.
    expect(days(refused)).toEqual([
      ["3E", 2, 1],
      [null, 6, 5],
    ]);
    const signed = refused.signed?.months.map(({ month, signedBy, hasOthers }) => [month, signedBy, hasOthers]);
    expect(signed).toEqual([[october, "Ash Moreno", false]]);
    const other = await desk.refused(correctCatheter, late(), { headers: { [acknowledgeHeader]: "0".repeat(64) } });
    expect(other.code).toBe("changes-signed-month");
    await desk.ask(correctCatheter, late(), { acknowledge: true });
    const [change, ...more] = await changes();
    expect(more).toEqual([]);
    expect(change).toMatchObject({ number: 1, by: desk.hospital.people.prevention, action: "correct-catheter" });
    expect(change).toMatchObject({
      entry: { kind: "catheter", id: first.catheterId, patientId: expect.any(Number) },
      isOpen: true,
    });
    expect(change?.figures).toContainEqual(
      expect.objectContaining({ ward: "3E", figure: "catheter_days", before: 2, after: 1 }),
    );
    const { months } = await desk.ask(listChangedMonths, {});
    const latest = { action: "correct-catheter", by: desk.hospital.people.prevention };
    expect(months).toMatchObject([{ month: october, changes: 1, wards: ["3E"], latest }]);
  });

  it("asks nothing where no figure of it changes, nor for days of months that nobody signed", async () => {
    await desk.ask(correctCatheter, { catheterId: first.catheterId, sizeFr: 16, reason, seenVersion: 3 });
    await desk.ask(correctStay, { stayId: first.stayId, disposition: "Home", reason, seenVersion: 2 });
    const wardId = desk.hospital.wards["3E"];
    await desk.ask(recordDailyCount, {
      ...{ wardId, day: day.parse("2026-11-02"), patients: 1, catheters: 1, replaces: null },
    });
    expect(await changes()).toHaveLength(1);
  });

  it("does not take what was acknowledged for other figures", async () => {
    const insertion = (at: string) => inputs.insertCatheter({ stayId: first.stayId, at } as Subjects);
    const stale = (await desk.refused(insertCatheter, insertion("2026-10-11T10:00"))).signed?.acknowledge ?? "";
    await desk.ask(
      correctCatheter,
      { ...late(), removedAt: "2026-10-10T20:00", seenVersion: 4 },
      { acknowledge: true },
    );
    const headers = { [acknowledgeHeader]: stale };
    const refused = await desk.refused(insertCatheter, insertion("2026-10-11T10:00"), { headers });
    expect(days(refused)).toContainEqual(["3E", 0, 2]);
  });

  it("is told to people of a unit with the figures of that unit alone", async () => {
    const input = inputs.insertCatheter({ stayId: first.stayId, at: "2026-10-10T21:00" } as Subjects);
    // Who left more than 72 hours ago is hidden from the unit; the patient is there again.
    const again = { wardId: desk.hospital.wards["3E"], identifier: "OCT-1", number: "OCT-1b", bed: "9" };
    await desk.ask(admitPatient, { ...again, admittedAt: "2026-11-19T08:00" });
    const refused = await desk.refused(insertCatheter, input, { person: "bedside" });
    expect(refused.signed?.months).toMatchObject([{ month: october, hasOthers: true }]);
    expect(refused.signed?.months.flatMap(({ figures }) => figures.map(({ ward }) => ward))).not.toContain(null);
    expect(days(refused)).toEqual([["3E", 0, 3]]);
    await desk.ask(insertCatheter, input, { person: "bedside", acknowledge: true });
    const own = await changes("bedside");
    expect(new Set(own.flatMap(({ figures }) => figures.map(({ ward }) => ward)))).toEqual(new Set(["3E"]));
    expect((await changes("manager")).map(({ entry }) => entry)).toEqual([null, null, null]);
  });

  it("is listed in every file of the month, for people of a unit with its figures alone, and in none of a signature", async () => {
    const document = async (person: "prevention" | "manager", signature?: number) =>
      (await desk.ask(readMonthDocument, { month: october, signature }, { person })).document;
    const listed = async (person: "prevention" | "manager") => {
      const { sheets, cover } = await document(person);
      expect(cover.some(({ label }) => label === "Changed after signing")).toBe(true);
      return sheets.find(({ id }) => id === "month-changes")?.rows ?? [];
    };
    const act = ["Recorded an insertion", expect.stringMatching(/^catheter \d+$/), "Kit Sandoval"] as const;
    const at = "2026-11-20T15:00:00.000Z";
    expect(await listed("prevention")).toContainEqual(["3E", "Catheter-days", 2, 3, ...act, at]);
    const ofManager = await listed("manager");
    expect(ofManager).toContainEqual(["3E", "Catheter-days", 2, 3, act[0], "", act[2], at]);
    expect(new Set(ofManager.map(([unit]) => unit))).toEqual(new Set(["3E"]));
    const [summary] = (await document("prevention")).sheets;
    expect(JSON.stringify(summary?.rows)).toContain(
      "Catheter-days: signed 2, present 3. Recorded an insertion, catheter",
    );
    expect((await document("prevention", 1)).sheets.map(({ id }) => id)).not.toContain("month-changes");
    const { sheet } = await desk.ask(readMonthFigureSheet, { month: october });
    const cell = (row: (typeof sheet.rows)[number], key: string) =>
      row[sheet.columns.findIndex((one) => one.key === key)];
    const keys = ["ward", "label", "value", "reason", "signed", "present", "changed_entry", "changed_by", "changed_at"];
    const changed = sheet.rows.filter((row) => cell(row, "figure") === "changed-after-signing");
    const [what, entry, who] = act;
    expect(changed.map((row) => keys.map((key) => cell(row, key)))).toContainEqual([
      ...["3E", "Catheter-days", null, what, 2, 3, entry, who, at],
    ]);
  });

  it("is written down and never refused when files are imported, and asks when one of their lines is dropped", async () => {
    const moves = [
      "OCT-9,OCT-9,4N,2026-10-20T08:00,2026-10-22T08:00",
      "OCT-10,OCT-10,3E,2026-10-20T08:00,2026-10-19T08:00",
    ];
    const files = [{ name: "moves.csv", text: `stay,patient,ward,from,to\n${moves.join("\n")}\n` }];
    const { importId } = await desk.ask(receiveImport, { files });
    await workOn(desk.hospital.store);
    expect((await desk.ask(readImport, { importId })).signedMonths).toEqual([october]);
    await desk.ask(decideImport, { importId, decision: "apply", setAside: true });
    await workOn(desk.hospital.store);
    const ofImport = (await changes()).filter(({ entry }) => entry?.kind === "import" && entry.id === importId);
    // The stored line, and the one that is held for repair.
    expect(
      ofImport.map(({ action, figures }) => [
        action,
        ["Patient-days", "Data quality"].filter((one) => figures.some(({ what }) => what === one)),
      ]),
    ).toEqual([
      ["import-lines", ["Data quality"]],
      ["import-lines", ["Patient-days", "Data quality"]],
    ]);
    const line = { importId, file: "moves.csv", line: 3, reason };
    const refused = await desk.refused(dropImportLine, line);
    expect(refused.signed?.months.flatMap(({ figures }) => figures.map(({ what }) => what))).toContain("Data quality");
    await desk.ask(dropImportLine, line, { acknowledge: true });
  });

  it("keeps why a line was dropped from people who may not see every patient, wherever it is shown", async () => {
    const shown = async (person: "prevention" | "bedside" | "manager") => {
      const answers = [
        (await desk.ask(readMonthGaps, { month: october }, { person })).gaps,
        (await desk.ask(readMonthFigures, { month: october }, { person })).report.completeness,
        (await desk.ask(readMonthFigureSheet, { month: october }, { person })).sheet.rows,
        (await desk.ask(readMonthDocument, { month: october }, { person })).document.sheets.map(({ rows }) => rows),
      ];
      return answers.map((answer) => {
        const text = JSON.stringify(answer);
        expect(text).toContain("moves.csv");
        return text.includes(reason) ? "shown" : text.includes("Reason shown to infection prevention only");
      });
    };
    const everywhere = <T>(what: T) => [what, what, what, what];
    expect(await shown("prevention")).toEqual(everywhere("shown"));
    expect(await shown("bedside")).toEqual(everywhere(true));
    expect(await shown("manager")).toEqual(everywhere(true));
  });

  it("is written down when two units are merged", async () => {
    const merging = { wardId: west, intoWardId: desk.hospital.wards["3E"], reason };
    const refused = await desk.refused(mergeWards, merging);
    expect(refused.signed?.months.flatMap(({ figures }) => figures.map(({ ward, what }) => `${ward} ${what}`))).toEqual(
      expect.arrayContaining(["3E Patient-days", "3-E Unit"]),
    );
    await desk.ask(mergeWards, merging, { acknowledge: true });
    expect((await changes())[0]).toMatchObject({ action: "merge-wards", isOpen: true });
  });

  it("is history once the month is signed again, or says again what was signed", async () => {
    await sign(1);
    expect(new Set((await changes()).map(({ isOpen }) => isOpen))).toEqual(new Set([false]));
    expect((await desk.ask(listChangedMonths, {})).months).toEqual([]);
    const { catheterId } = second;
    const correct = (removedAt: string, seenVersion: number) =>
      desk.ask(correctCatheter, { catheterId, removedAt, reason, seenVersion }, { acknowledge: true });
    await correct("2026-10-11T09:00", 2);
    expect((await desk.ask(listChangedMonths, {})).months).toHaveLength(1);
    await correct("2026-10-12T09:00", 3);
    expect((await desk.ask(listChangedMonths, {})).months).toEqual([]);
    expect((await changes()).slice(0, 2).map(({ number }) => number)).toEqual([2, 2]);
  });

  it("is a review of a day in it, and no review of today", async () => {
    const review = (at: string) => ({
      ...({ catheterId: first.catheterId, at, outcome: "keep", indication: "perioperative" } as const),
    });
    const admission = { wardId: desk.hospital.wards["4N"], identifier: "OCT-20", number: "OCT-20", bed: "8" };
    const admitting = { ...admission, admittedAt: "2026-10-28T08:00" };
    const { stayId } = await desk.ask(admitPatient, admitting, { acknowledge: true });
    const insertion = inputs.insertCatheter({ stayId, at: "2026-10-28T09:00" } as Subjects);
    const { catheterId } = await desk.ask(insertCatheter, insertion, { acknowledge: true });
    await desk.ask(reviewCatheter, { ...review("2026-11-20T09:00"), catheterId });
    const refused = await desk.refused(reviewCatheter, { ...review("2026-10-30T11:00"), catheterId });
    expect(refused.code).toBe("changes-signed-month");
  });
});
