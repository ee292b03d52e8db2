import { beforeAll, expect, it } from "vitest";
import { month as monthText } from "../../shared/day.ts";
import { loadAlderBay } from "../../src/demo/load-alder-bay.ts";
import { verifyDeterminations } from "../../src/usecases/jobs/check-determinations.ts";
import { verifyLedger } from "../../src/usecases/jobs/check-ledger.ts";
import { readAgreement } from "../../src/usecases/months/read-agreement.ts";
import { readMonthFigures } from "../../src/usecases/months/read-month-figures.ts";
import { findNumbered } from "../../src/usecases/record/find-numbered.ts";
import { readCatheter } from "../../src/usecases/record/read-catheter.ts";
import { readRound } from "../../src/usecases/record/read-round.ts";
import { listPolicies } from "../../src/usecases/settings/list-policies.ts";
import { listWards } from "../../src/usecases/wards/list-wards.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { hospitalIn } from "../databases/hospital.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { noon, zone } from "./drawn.ts";

onEachDatabase("the demo when it is loaded", (fresh) => {
  const shared = sharedStore(fresh);
  let act: Parameters<typeof verifyLedger>[0];

  beforeAll(async () => {
    const hospital = await hospitalIn(shared.store, { now: noon });
    act = hospital.at(noon);
    // Two months: what a shorter one has, the whole year has too.
    await loadAlderBay(act, { seed: 1, zone, days: 60 }, () => undefined);
  }, 180_000);

  /** A catheter of a scene with its notes and corrections. */
  const catheter = async (number: string) => {
    const { catheterIds } = await findNumbered(act, { stays: [], catheters: [number] });
    return readCatheter(act, { catheterId: catheterIds.get(number) ?? 0 });
  };
  const wardId = async (code: string) =>
    (await listWards(act, {})).wards.find((ward) => ward.code === code)?.wardId ?? 0;

  it("agrees with a recount of its ledger", async () => {
    const { rows, differences } = await verifyLedger(act);
    expect(differences).toEqual([]);
    expect(rows).toBeGreaterThan(3000);
  });

  it("keeps what a late entry said before it was corrected, and when it was written down", async () => {
    const { notes, corrections } = await catheter("CX-late-entry");
    const late = notes.filter((note) => zone.dayOf(note.writtenAt) > zone.dayOf(note.at));
    expect(late).toMatchObject([{ outcome: "keep", indication: "wound-healing", version: 2 }]);
    expect(corrections).toContainEqual(
      expect.objectContaining({ reason: "Chosen from the wrong line of the list", version: 1 }),
    );
  });

  it("keeps the insertion that was charted an hour late", async () => {
    const { corrections, insertedAt } = await catheter("CX-reinsertion-1");
    const correction = corrections.find(({ reason }) => reason === "Charted an hour late");
    expect(correction?.before).toMatchObject({
      insertedAt: new Date((insertedAt ?? 0) + 3_600_000).toISOString(),
    });
  });

  it("has recent insertions with their records and removals with their reasons, written down when they were made", async () => {
    const first = await catheter("CX-exchange-1");
    expect(first).toMatchObject({ removalRecord: { reason: "exchange", catheterIntact: true } });
    expect(first.insertionRecord).toMatchObject({ insertedIn: "ward", orderChecked: true });
    expect(first.notes.map(({ kind }) => kind)).toEqual(expect.arrayContaining(["review", "care-check"]));
    for (const { at, writtenAt } of first.notes) expect(writtenAt - at).toBeLessThan(2 * 3_600_000);
  });

  it("has policies of two wards, each recorded before it began", async () => {
    const { policies } = await listPolicies(act, {});
    expect(policies).toHaveLength(2);
    for (const { fromDay, recordedAt } of policies) expect(recordedAt).toBeLessThan(Date.parse(fromDay) + 86_400_000);
    const round = await readRound(act, { wardId: await wardId("ICU") });
    const sentences = round.rows.flatMap(({ states }) => states.map(({ policy }) => policy.sentence));
    expect(sentences.some((sentence) => sentence.startsWith("Policy of unit ICU, version 1"))).toBe(true);
  });

  it("was counted by hand on 3E for a month that can be compared", async () => {
    const agreement = await readAgreement(act, { wardId: await wardId("3E"), month: "2026-10" as never });
    expect(JSON.stringify(agreement)).toContain("2026-10");
  });

  it("compares its months with a baseline that says it is invented, and leaves a ward out of it", async () => {
    const month = monthText.parse(new Date(noon - 31 * 86_400_000).toISOString().slice(0, 7));
    const { report } = await readMonthFigures(act, { month });
    expect(report.cautions.join(" ")).toContain("invented for practice: compare nothing real with them");
    const sur = (code: string) =>
      report.wards.find((ward) => ward.code === code)?.figures.find(({ key }) => key === "sur");
    expect(sur("3E")?.value).toBeGreaterThan(0);
    expect(sur("4S")?.reason).toBe("Practice baseline does not cover wards of the type rehabilitation ward.");
    const figures = [...report.wards, report.total].flatMap((part) => part.figures);
    expect(figures.filter(({ value, reason }) => (value === null) !== (reason !== null))).toEqual([]);
  });

  it("has a culture of each kind, as its record is determined to be", async () => {
    const { differences, cases } = await verifyDeterminations(act);
    expect(differences).toEqual([]);
    expect(cases).toBeGreaterThan(8);
    const rows = await shared.store.read(({ db }) =>
      db.determination.findMany({
        where: { state: { not: "replaced" }, patient: { identifier: { startsWith: "ABX-" } } },
        include: { patient: true },
        orderBy: { day: "asc" },
      }),
    );
    const told = (name: string) =>
      rows
        .filter(({ patient }) => patient.identifier === `ABX-${name}`)
        .map(({ outcome, state, isCauti, wardId: ward }) => ({ outcome, state, isCauti, ward }));
    const [threeEast, fourNorth, icu] = [await wardId("3E"), await wardId("4N"), await wardId("ICU")];
    const event = { outcome: "event", isCauti: true } as const;
    const none = { isCauti: false, ward: null } as const;
    expect(told("waiting-event")).toEqual([{ ...event, state: "waiting", ward: threeEast }]);
    expect(told("cannot-tell")).toEqual([{ ...none, outcome: "cannot-tell", state: "waiting" }]);
    expect(told("pending-culture")).toEqual([{ ...none, outcome: "pending", state: "pending" }]);
    expect(told("repeat-culture")).toEqual([
      // The repeat came after somebody had confirmed the event, and added its organism.
      { ...event, state: "changed", ward: fourNorth },
      { ...none, outcome: "repeat", state: "confirmed" },
    ]);
    expect(told("present-on-admission")).toEqual([{ ...none, outcome: "event", state: "confirmed" }]);
    // On the day after the move to 3E: the unit that transferred.
    expect(told("transfer-rule")).toEqual([{ ...event, state: "confirmed", ward: icu }]);
    // Without a sign; the same commensal in two blood specimens of two days.
    expect(told("commensal-blood")).toEqual([{ ...event, state: "confirmed", ward: icu }]);
  });

  it("has nothing that lies ahead", async () => {
    const later = { gt: new Date(noon) };
    const ahead = await shared.store.read(async ({ db }) => [
      await db.catheterNote.count({ where: { OR: [{ at: later }, { recordedAt: later }] } }),
      await db.wardStay.count({ where: { OR: [{ startAt: later }, { endAt: later }] } }),
      await db.catheter.count({ where: { OR: [{ insertedAt: later }, { removedAt: later }] } }),
      await db.auditEntry.count({ where: { at: later } }),
    ]);
    expect(ahead).toEqual([0, 0, 0, 0]);
  });
});
