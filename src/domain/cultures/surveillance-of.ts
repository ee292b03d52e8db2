import type { FindingKind } from "../../../shared/case-words.ts";
import { urineFinding } from "../../../shared/culture-words.ts";
import {
  type FindingInUrine,
  type GrownOrganism,
  recordedWay,
  type Sign,
  type Specimen,
  type SurveillanceTimeline,
  type WayRules,
} from "../criteria/index.ts";
import type { DayNumber } from "../days/day-number.ts";
import type { Zone } from "../days/zone.ts";
import { hasNoHour, type PatientTimeline, stands } from "../timeline/timeline.ts";
import type { RecordedFinding } from "./finding.ts";
import { type LaboratoryWords, noWords } from "./laboratory-words.ts";
import type { RecordedSign } from "./sign.ts";
import { countOf, identityOf, type RecordedOrganism, type RecordedSpecimen, type WordsThen } from "./specimen.ts";

/** Everything recorded of a patient that decides a determination, over all stays; voided entries may be among it. */
export interface CultureRecord {
  readonly birthDay: DayNumber | null;
  readonly timeline: PatientTimeline;
  readonly specimens: readonly RecordedSpecimen[];
  readonly signs: readonly RecordedSign[];
  readonly findings: readonly RecordedFinding[];
}

/** What a record is read by: zone, wards, and the facility's choices for wordings of its laboratory. */
export interface ReadingOfRecord extends WayRules {
  readonly words?: LaboratoryWords;
}

/** The record as determinations ask for it, on the day of the question. */
export function surveillanceOf(
  { birthDay, timeline, specimens, signs, findings }: CultureRecord,
  rules: ReadingOfRecord,
  knownThrough: DayNumber,
): SurveillanceTimeline {
  return {
    ...recordedWay(timeline, rules),
    ...{ knownThrough, birthDay },
    deathDay: firstDayOf(findings, "death"),
    donorSupportFrom: firstDayOf(findings, "donor-support"),
    findings: findings.filter(stands).flatMap(findingFrom),
    specimens: specimens.filter(stands).map((one) => specimenFrom(one, rules)),
    signs: signs.filter(stands).map((one) => signFrom(one, rules.zone)),
  };
}

function specimenFrom(specimen: RecordedSpecimen, { zone, words = noWords }: ReadingOfRecord): Specimen {
  const { id, kind, collectedAt, method, status, organisms, writtenAt } = specimen;
  const collected = { day: zone.dayOf(collectedAt), at: hasNoHour(specimen, "collectedAt") ? null : collectedAt };
  const grown = organisms.map((one) => organismFrom(one, { words, writtenAt }));
  return { id, kind, collected, method, status, organisms: grown };
}

function organismFrom(organism: RecordedOrganism, then: WordsThen): GrownOrganism {
  const { id, name } = organism;
  return { id, name, identity: identityOf(organism, then), count: countOf(organism, then) };
}

function signFrom({ id, sign, day, at, finding, temperature, otherCause, ...one }: RecordedSign, zone: Zone): Sign {
  const { lastDay, readAt } = one;
  const review = readAt === null ? null : { lastDay: lastDay ?? day, readDay: zone.dayOf(readAt) };
  return { id, sign, when: { day, at }, finding, temperature, otherCause, review };
}

function findingFrom({ id, finding, day, at, present, cellsPerMm3 }: RecordedFinding): FindingInUrine[] {
  const named = urineFinding.safeParse(finding);
  return named.success ? [{ id, finding: named.data, when: { day, at }, present, cellsPerMm3 }] : [];
}

/** The first day on which something is recorded to have been so; null when nothing is. */
function firstDayOf(findings: readonly RecordedFinding[], finding: FindingKind): DayNumber | null {
  const days = findings.filter((one) => stands(one) && one.present && one.finding === finding).map(({ day }) => day);
  return days.length === 0 ? null : Math.min(...days);
}
