import { endpoints } from "../../shared/api/index.ts";
import { day, month } from "../../shared/day.ts";
import type { Endpoint, InputOf } from "../../shared/endpoint.ts";
import type { ChangedEntry } from "../../shared/signed-changes.ts";
import { defaultPolicy } from "../../src/domain/policy/default-policy.ts";
import type { Desk } from "./desk.ts";
import { fullRecord } from "./inputs.ts";

export const october = month.parse("2026-10");
const reason = "The chart says otherwise";
const september = month.parse("2026-09");
const first = day.parse("2026-10-01");
const { admitPatient, dischargePatient, insertCatheter, recordSigns, recordSpecimen, removeCatheter } = endpoints;

interface Cultured {
  readonly patientId: number;
  readonly caseId: number;
}

/** Who is there before October is signed. */
export interface Signed {
  /** SUTI 1a of 12 October. */
  readonly one: Cultured;
  /** SUTI 1a of 18 October: within the 14 days of the first, were both one patient. */
  readonly other: Cultured;
  /** A fever and at least 100,000 of a wording that nothing reads. */
  readonly unread: Cultured;
  readonly scopeId: number;
}

/** A patient of 3E with a catheter, a fever and a culture on a day of October that is at least the third. */
async function cultured(
  { ask, hospital }: Desk,
  name: string,
  [from, taken, to]: readonly [number, number, number],
  grew: string,
): Promise<Cultured> {
  const on = (of: number, hour: string) => `2026-10-${String(of).padStart(2, "0")}T${hour}:00`;
  const { patientId, stayId } = await ask(admitPatient, {
    ...{ wardId: hospital.wards["3E"], identifier: name, number: name, admittedAt: on(from, "08") },
    ...{ birthDay: day.parse("1960-05-05"), bed: "7" },
  });
  const { catheterId } = await ask(insertCatheter, {
    ...{ stayId, kind: "indwelling-urethral", insertedAt: on(from, "09"), indication: "perioperative" },
    ...{ sizeFr: 14, balloonMl: 10, record: fullRecord },
  });
  await ask(removeCatheter, { catheterId, removedAt: on(to, "06"), seenVersion: 1 });
  await ask(dischargePatient, { stayId, dischargedAt: on(to, "07"), seenVersion: 1 });
  const fever = { sign: "temperature", finding: "present", temperature: "38.6 °C" } as const;
  await ask(recordSigns, { patientId, day: day.parse(on(taken, "07").slice(0, 10)), signs: [fever] });
  const { specimenId: caseId } = await ask(recordSpecimen, {
    ...{ patientId, kind: "urine", method: "culture", status: "final", collectedAt: on(taken, "07") },
    organisms: [{ name: grew, count: ">100000" }],
  });
  return { patientId, caseId };
}

/** October of 3E, under surveillance and ready to be signed. */
export async function readyToSign(desk: Desk): Promise<Signed> {
  const { ask } = desk;
  const { wards } = desk.hospital;
  const observation = { name: "Observation", type: null, setting: "outpatient", beds: null, reason } as const;
  await ask(endpoints.describeWard, { ...observation, wardId: wards.OBS, fromDay: day.parse("2026-01-01") });
  const watched = { wardId: wards["3E"], fromMonth: september, toMonth: null, edition: "us-2024" } as const;
  const { scopeId } = await ask(endpoints.watchWard, watched);
  const one = await cultured(desk, "DAY-1", [5, 12, 14], "Escherichia coli");
  const other = await cultured(desk, "DAY-2", [15, 18, 22], "Klebsiella pneumoniae");
  const unread = await cultured(desk, "DAY-3", [5, 20, 25], "Odd rod");
  for (const { caseId } of [one, other, unread]) await ask(endpoints.confirmCase, { caseId, seenVersion: 1 });
  return { one, other, unread, scopeId };
}

/** An act about a signed month, and what it makes of one of its figures; null: nothing. */
export interface ActAfterSigning {
  readonly title: string;
  readonly act: readonly [endpoint: Endpoint, input: Record<string, unknown>];
  readonly changes: readonly [unit: string | null, what: string, before: unknown, after: unknown] | null;
  /** What the change is listed with; null: the act is about nothing that has a page of its own. */
  readonly entry?: ChangedEntry | null;
}

/** What is remembered of the acts that were done: the next ones name it. */
export interface Done {
  wardId: number;
  mergeId: number;
}

function act<E extends Endpoint>(endpoint: E, input: InputOf<E>): ActAfterSigning["act"] {
  return [endpoint, input];
}

type Acts = ((done: Done) => ActAfterSigning)[];

const ofCase = ({ caseId: id, patientId }: Cultured): ChangedEntry => ({ kind: "case", id, patientId });
const ofPatient = (patientId: number): ChangedEntry => ({ kind: "patient", id: patientId, patientId });
const ofWard = (id: number): ChangedEntry => ({ kind: "ward", id, patientId: null });

function word(choice: string | null, replaces?: number): ActAfterSigning["act"] {
  return act(endpoints.chooseLaboratoryWords, {
    words: [{ column: "organism", wording: "Odd rod", choice, ...(replaces === undefined ? {} : { replaces }) }],
  });
}

const applied = act(endpoints.applyLaboratoryWord, { column: "organism", wording: "Odd rod" });

function policy(replaces: number, of: number | null, body: object, fromDay = first): ActAfterSigning["act"] {
  return act(endpoints.setPolicy, {
    ...{ wardId: of, fromDay, replaces, reason },
    body: { ...defaultPolicy, ...body },
  });
}

/** The acts in their order; each is asked for once those before it were done. Figures by hand, from {@link readyToSign}. */
export function actsAfterSigning({ hospital }: Desk, signed: Signed): Acts {
  const { "3E": wardId, "4N": north } = hospital.wards;
  return [
    ...actsOnRules(wardId),
    ...actsOnCases(signed),
    ...actsOnPatients(signed),
    ...actsOnSurveillance(signed, { wardId, north }),
    ...actsOnComparison(wardId),
    ...actsOnAUnitWithoutDays(wardId),
  ];
}

/** Readings and policies. */
function actsOnRules(wardId: number): Acts {
  return [
    () => ({
      title: "a reading from a month to come",
      act: act(endpoints.chooseReading, {
        ...{ editionId: "us-2024", option: "lookedFor", value: "every-day", reason },
        fromMonth: month.parse("2026-12"),
      }),
      changes: null,
    }),
    // By hand: 9, 7 and 20 catheter-days at the censuses after the insertion, of which the first is eligibility day 2. The built-in
    // policy lets a perioperative catheter have two days: 8 + 6 + 19. With one day, all of them.
    () => ({
      title: "another threshold of the facility",
      act: policy(0, null, { thresholdDays: 1, thresholdByIndication: {} }),
      changes: ["3E", "Days past threshold", 33, 36],
      entry: null,
    }),
    // Due at 12:00 of eligibility days from 2 on, before the removals at 06:00: 8 + 6 + 19; from day 5 on 5 + 3 + 16.
    () => ({
      title: "a policy of one unit",
      act: policy(0, wardId, { reviewFromDay: 5 }),
      changes: ["3E", "Reviews done in time", "0 of 33", "0 of 24"],
      entry: ofWard(wardId),
    }),
    () => ({
      title: "a policy from today on",
      act: policy(1, null, { reviewFromDay: 3 }, day.parse("2026-11-20")),
      changes: null,
    }),
  ];
}

/** Decisions and laboratory words. */
function actsOnCases({ one, unread }: Signed): Acts {
  return [
    () => ({
      title: "a decision that is taken back",
      act: act(endpoints.reopenCase, { caseId: one.caseId, reason, seenVersion: 2 }),
      changes: ["3E", "Cultures waiting for confirmation", 0, 1],
      entry: ofCase(one),
    }),
    () => ({
      title: "a decision",
      act: act(endpoints.disagreeWithCase, { caseId: one.caseId, reason, seenVersion: 3 }),
      changes: ["3E", "Cultures waiting for confirmation", 1, 0],
      entry: ofCase(one),
    }),
    () => ({ title: "a laboratory word for specimens to come", act: word("bacterium"), changes: null }),
    () => ({
      title: "the word applied to past specimens",
      act: applied,
      changes: ["3E", "Cultures waiting for confirmation", 0, 1],
      entry: ofPatient(unread.patientId),
    }),
    () => ({
      title: "a confirmation of what it was determined to be",
      act: act(endpoints.confirmCase, { caseId: unread.caseId, seenVersion: 3 }),
      changes: ["3E", "CAUTIs", "2, not final: 1 open", 3],
      entry: ofCase(unread),
    }),
    () => ({ title: "another group for the word", act: word("mixed-flora", 2), changes: null }),
    () => ({
      title: "the group applied to past specimens",
      act: applied,
      changes: ["3E", "CAUTIs", 3, "2, not final: 1 open"],
      entry: ofPatient(unread.patientId),
    }),
  ];
}

/** Which records are one patient. */
function actsOnPatients({ one, other }: Signed): Acts {
  return [
    () => ({
      title: "a merge of two patients",
      act: act(endpoints.mergePatients, { patientId: one.patientId, fromId: other.patientId }),
      changes: ["3E", "Cultures waiting for confirmation", 1, 3],
      entry: ofPatient(other.patientId),
    }),
    ({ mergeId }) => ({
      title: "a merge that is taken back",
      act: act(endpoints.unmergePatients, { patientId: one.patientId, mergeId, reason }),
      changes: ["3E", "Days past threshold", 34, 33],
      entry: ofPatient(other.patientId),
    }),
    () => ({
      title: "a day of birth that decides nothing",
      act: act(endpoints.correctPatient, {
        ...{ patientId: one.patientId, birthDay: day.parse("1961-05-05"), sex: null, reason },
        seen: { birthDay: day.parse("1960-05-05"), sex: null },
      }),
      changes: null,
    }),
  ];
}

/** Which units are under surveillance, by which definitions. */
function actsOnSurveillance({ scopeId }: Signed, { wardId, north }: Record<"wardId" | "north", number>): Acts {
  return [
    () => ({
      title: "the surveillance of another unit",
      act: act(endpoints.watchWard, { wardId: north, fromMonth: october, toMonth: october, edition: "us-2024" }),
      changes: ["4N", "Definitions of infections", null, "us-2024"],
      entry: ofWard(north),
    }),
    () => ({
      title: "no infection identified on it",
      act: act(endpoints.recordNoneFound, { wardId: north, month: october }),
      changes: null,
    }),
    () => ({
      title: "an end of the surveillance before the month",
      act: act(endpoints.endWatch, { wardId, scopeId, toMonth: september, reason, seenVersion: 1 }),
      changes: ["3E", "Definitions of infections", "us-2024", null],
      entry: ofWard(wardId),
    }),
    () => ({
      title: "the surveillance entered in error",
      act: act(endpoints.voidWatch, { wardId, scopeId, reason, seenVersion: 2 }),
      changes: null,
    }),
    () => ({
      title: "surveillance by other definitions",
      act: act(endpoints.watchWard, { wardId, fromMonth: october, toMonth: null, edition: "ecdc-2017" }),
      changes: ["3E", "Definitions of infections", null, "ecdc-2017"],
      entry: ofWard(wardId),
    }),
  ];
}

/** With what months are compared, and what a unit is. */
function actsOnComparison(wardId: number): Acts {
  return [
    () => ({
      title: "a target for the SIR",
      act: act(endpoints.setComparison, {
        ...{ fromMonth: october, infectionBaselineId: null, utilizationBaselineId: null },
        ...{ goal: 0.8, limits: "mid-p", factors: [], reason, replaces: 0 },
      }),
      changes: [null, "Target for the SIR", null, 0.8],
      entry: null,
    }),
    () => ({
      title: "a baseline that nothing is compared with",
      act: act(endpoints.addOwnBaseline, { name: "October", fromMonth: october, toMonth: october }),
      changes: null,
    }),
    () => ({
      title: "what a unit is",
      act: act(endpoints.describeWard, {
        ...{ wardId, name: "3E", type: "surgical", setting: "inpatient", beds: null, fromDay: first, reason },
      }),
      changes: ["3E", "Type of unit", null, "surgical"],
      entry: ofWard(wardId),
    }),
    () => ({
      title: "a census time from a month to come",
      act: act(endpoints.setCensus, { fromDay: day.parse("2027-01-01"), time: "06:00" as never, reason }),
      changes: null,
    }),
  ];
}

/** A unit that was in the month and had no patient. */
function actsOnAUnitWithoutDays(wardId: number): Acts {
  const unit = { name: "5S", type: null, setting: "inpatient", beds: null, openedDay: first } as const;
  const isThere = ["not in the month", "in the month"] as const;
  const isGone = ["in the month", "not in the month"] as const;
  const added = (code: string) => (): ActAfterSigning => ({
    title: `a unit ${code} that was there`,
    act: act(endpoints.addWard, { ...unit, code }),
    changes: [code, "Unit", ...isThere],
  });
  return [
    added("5S"),
    (done) => ({
      title: "a unit without patients that is closed",
      act: act(endpoints.closeWard, { wardId: done.wardId, closedDay: day.parse("2026-10-10") }),
      changes: null,
    }),
    (done) => ({
      title: "a unit without patients that was entered in error",
      act: act(endpoints.voidWard, { wardId: done.wardId, reason }),
      changes: ["5S", "Unit", ...isGone],
    }),
    added("6S"),
    (done) => ({
      title: "a unit without patients that is merged",
      act: act(endpoints.mergeWards, { wardId: done.wardId, intoWardId: wardId, reason }),
      changes: ["6S", "Unit", ...isGone],
    }),
  ];
}
