import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { day, month } from "../../shared/day.ts";
import { verifyDeterminations } from "../../src/usecases/jobs/check-determinations.ts";
import { findPerson } from "../../src/usecases/settings/find-person.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { lookedAt } from "./alder-bay.ts";
import { cultured } from "./cultured.ts";
import { type Desk, openDesk } from "./desk.ts";

const { confirmCase, correctSpecimen, disagreeWithCase, listCases, readCase, readMonth, readMonthGaps } = endpoints;
const { reopenCase, recordFinding, recordSpecimen, watchWard } = endpoints;
const november = month.parse("2026-11");
const october = month.parse("2026-10");
const reason = "The cough came first";

onEachDatabase("the work on determined cultures", (fresh) => {
  let desk: Desk;
  let wardId: number;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    wardId = desk.hospital.wards["3E"];
  });
  afterAll(() => desk?.close());

  const listed = async (list: "waiting" | "pending" | "decided" | "closed") =>
    (await desk.ask(listCases, { list })).cases;
  const only = async (list: Parameters<typeof listed>[0], caseId: number) =>
    (await listed(list)).find((one) => one.caseId === caseId);
  const counted = async () =>
    (await desk.ask(readMonth, { month: november })).infections.find((one) => one.wardId === wardId);

  it("waits with a glance, is confirmed as it was seen, and is counted from then on", async () => {
    await desk.ask(watchWard, { wardId, fromMonth: october, toMonth: null, edition: "us-2024" });
    const { caseId, patientId, identifier } = await cultured(desk);
    const one = await only("waiting", caseId);
    expect(one).toMatchObject({
      ...{ caseId, patientId, identifier, wardId, version: 1, state: "waiting", outcome: "event", isCauti: true },
      ...{ criterion: "suti-1a", dateOfEvent: "2026-11-12", ageDays: 8, changed: null, isDischarged: false },
      summary:
        "Definition met, SUTI 1a: symptomatic infection with a catheter, 12 November 2026, healthcare-associated, catheter-associated, unit 3E",
      grew: ["Escherichia coli >100000"],
    });
    expect(one?.glance).toHaveLength(14);
    expect(one?.glance.slice(9, 11)).toEqual([
      { day: "2026-11-11", wardId, catheter: true, signs: [], urine: 0, blood: 0 },
      { day: "2026-11-12", wardId, catheter: true, signs: ["38.6 °C"], urine: 1, blood: 0 },
    ]);
    expect(await counted()).toMatchObject({ cautis: 0, waiting: 1, isWatched: true, edition: "us-2024" });
    const stale = await desk.refused(confirmCase, { caseId, seenVersion: 7 });
    expect([stale.status, stale.code]).toEqual([412, "stale-version"]);
    expect(await desk.ask(confirmCase, { caseId, seenVersion: 1 })).toEqual({ caseId, version: 2, state: "confirmed" });
    expect(await counted()).toMatchObject({ cautis: 1, waiting: 0 });
    const { sheet } = await desk.ask(readMonth, { month: november });
    expect(sheet.columns.map(({ key }) => key)).toContain("cautis");
    expect(await only("decided", caseId)).toMatchObject({ state: "confirmed", version: 2 });
    const { determination, decisions, history, picture } = await desk.ask(readCase, { caseId });
    expect(determination?.derivation.map(({ sentence }) => sentence).join(" ")).toContain("unit 3E");
    expect(decisions).toMatchObject([{ kind: "confirmation", reason: null, by: desk.hospital.people.prevention }]);
    expect(history).toMatchObject([{ number: 1, isChange: true, cause: "record-specimen" }]);
    expect(picture.wards).toMatchObject([{ wardId, first: "2026-11-05", last: null, setting: "inpatient" }]);
    expect(picture.catheters).toMatchObject([{ first: "2026-11-05", last: null, latestLast: null }]);
    expect(picture.specimens).toMatchObject([{ specimenId: caseId, day: "2026-11-12", outcome: "event" }]);
  });

  it("returns when a record changes, with what changed and why, and holds again when it changes back", async () => {
    const { caseId, signId } = await cultured(desk);
    await desk.ask(disagreeWithCase, { caseId, reason, seenVersion: 1 });
    expect(await only("decided", caseId)).toMatchObject({ state: "disagreed" });
    const before = await counted();
    const change = { signId, reason: "Read from the wrong line", seenVersion: 1 };
    await desk.ask(endpoints.correctSign, { ...change, temperature: "37.2 °C" });
    const returned = await only("waiting", caseId);
    expect(returned).toMatchObject({
      ...{ state: "changed", version: 3, outcome: "cannot-tell" },
      changed: { cause: "correct-sign", reason: "Read from the wrong line", after: "Cannot be determined yet" },
    });
    expect(returned?.changed?.before).toMatch(/^Definition met, SUTI 1a/);
    expect(returned?.lookUp.length).toBeGreaterThan(0);
    expect(await counted()).toMatchObject({ cautis: (before?.cautis ?? 0) - 1, cannotTell: 1 });
    await desk.ask(endpoints.correctSign, { ...change, temperature: "38.6 °C", seenVersion: 2 });
    expect(await only("decided", caseId)).toMatchObject({ state: "disagreed", version: 4, changed: null });
    const opened = await desk.ask(reopenCase, { caseId, reason, seenVersion: 4 });
    expect(opened).toEqual({ caseId, version: 5, state: "waiting" });
    expect((await desk.refused(reopenCase, { caseId, reason, seenVersion: 5 })).code).toBe("not-decided");
    await desk.ask(confirmCase, { caseId, seenVersion: 5 });
    const withdrawn = { specimenId: caseId, status: "withdrawn" as const, reason: "By telephone", seenVersion: 1 };
    await desk.ask(correctSpecimen, withdrawn);
    expect(await only("waiting", caseId)).toMatchObject({ state: "changed", changed: { cause: "correct-specimen" } });
    await desk.ask(endpoints.voidSpecimen, { specimenId: caseId, reason, seenVersion: 2 });
    expect(await only("waiting", caseId)).toMatchObject({
      outcome: null,
      version: 8,
      summary: expect.stringContaining("Entered in error"),
    });
  });

  it("returns when a repeat adds an organism, or blood makes it a bloodstream infection too, and says so", async () => {
    const { caseId, patientId } = await cultured(desk);
    await desk.ask(confirmCase, { caseId, seenVersion: 1 });
    const report = { patientId, method: "culture", status: "final" } as const;
    await desk.ask(recordSpecimen, {
      ...{ ...report, kind: "urine", collectedAt: "2026-11-13T07:00" },
      organisms: [{ name: "Enterococcus faecalis", count: ">100000" }],
    });
    const line = "Definition met, SUTI 1a: symptomatic infection with a catheter, 12 November 2026";
    const one = await only("waiting", caseId);
    expect(one?.changed?.before).toMatch(
      /Organisms: Escherichia coli\. Secondary bloodstream infection: no blood specimens$/,
    );
    expect(one?.changed?.after).toMatch(/Organisms: Escherichia coli, Enterococcus faecalis\. /);
    expect([one?.changed?.before, one?.changed?.after].every((words) => words?.startsWith(line))).toBe(true);
    await desk.ask(recordSpecimen, {
      ...{ ...report, kind: "blood", collectedAt: "2026-11-13T07:00" },
      organisms: [{ name: "Escherichia coli" }],
    });
    expect((await only("waiting", caseId))?.changed?.after).toMatch(
      /Secondary bloodstream infection: 1 blood specimen$/,
    );
  });

  it("closes itself without growth, waits for the laboratory, and may end as what nobody can tell", async () => {
    const { caseId } = await cultured(desk, { grew: "No growth" });
    expect(await only("closed", caseId)).toMatchObject({
      ...{ state: "closed", outcome: "negative", hinges: [] },
      closedBecause: "The urine culture of 12 November 2026 grew nothing.",
    });
    const closedIn = async (text: string) =>
      (await desk.ask(listCases, { list: "closed", month: month.parse(text) })).cases.map((one) => one.caseId);
    expect([await closedIn("2026-10"), await closedIn("2026-11")]).toEqual([[], expect.arrayContaining([caseId])]);
    expect((await counted())?.closed).toBeGreaterThan(0);
    expect((await desk.refused(confirmCase, { caseId, seenVersion: 1 })).code).toBe("nothing-to-decide");
    const doubtful = await cultured(desk, { grew: "Odd thing" });
    const gaps = async () =>
      (await desk.ask(readMonthGaps, { month: november })).gaps
        .filter((gap) => gap.wardId === wardId)
        .map(({ kind, count }) => `${kind} ${count}`);
    expect(await gaps()).toContain("cannot-be-determined 1");
    await desk.ask(confirmCase, { caseId: doubtful.caseId, seenVersion: 1 });
    expect(await gaps()).not.toContain("cannot-be-determined 1");
    const { patientId } = doubtful;
    const pending = { kind: "urine", method: "culture", status: "pending", collectedAt: "2026-11-13T07:00" } as const;
    const second = await desk.ask(recordSpecimen, { patientId, ...pending, organisms: [] });
    expect(await only("pending", second.specimenId)).toMatchObject({ outcome: "pending" });
    expect(await gaps()).toContain("cultures-pending 1");
  });

  it("does not report what was collected after death or during support for organ donation", async () => {
    const { caseId, patientId } = await cultured(desk);
    const found = { patientId, day: day.parse("2026-11-11"), present: true } as const;
    const { findingId } = await desk.ask(recordFinding, { ...found, finding: "donor-support" });
    expect(await only("waiting", caseId)).toMatchObject({ outcome: "excluded", isCauti: false });
    await desk.ask(endpoints.voidFinding, { findingId, reason, seenVersion: 1 });
    expect(await only("waiting", caseId)).toMatchObject({ outcome: "event", isCauti: true });
    await desk.ask(recordFinding, { ...found, finding: "death" });
    // Bacteria grew, and whether findings after death count is an open reading: it does not close unseen.
    expect(await only("waiting", caseId)).toMatchObject({ outcome: "set-aside" });
    const odd = await desk.refused(recordFinding, { ...found, finding: "death", cellsPerMm3: 3 });
    expect([odd.status, odd.code]).toEqual([422, "finding-contradicts"]);
  });

  it("keeps what the whole record is determined to be", async () => {
    const actor = await findPerson(desk.hospital.store, desk.hospital.people.prevention);
    if (!actor) throw new Error("the hospital has nobody");
    const check = await verifyDeterminations({ store: desk.hospital.store, actor, now: lookedAt });
    expect(check.differences).toEqual([]);
    expect(check.cases).toBeGreaterThan(5);
  });
});
