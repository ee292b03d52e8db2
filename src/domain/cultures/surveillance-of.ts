import type { FindingKind } from "../../../shared/case-words.ts";
import { urineFinding } from "../../../shared/culture-words.ts";
import {
  type FindingInUrine,
  type GrownOrganism,
  readCount,
  recordedWay,
  type Sign,
  type Specimen,
  type SurveillanceTimeline,
  type WayRules,
} from "../criteria/index.ts";
import type { DayNumber } from "../days/day-number.ts";
import type { Zone } from "../days/zone.ts";
import { type PatientTimeline, stands } from "../timeline/timeline.ts";
import type { RecordedFinding } from "./finding.ts";
import type { RecordedSign } from "./sign.ts";
import { identityOf, type RecordedOrganism, type RecordedSpecimen } from "./specimen.ts";

/** Everything recorded of a patient that decides a determination, over all stays; voided entries may be among it. */
export interface CultureRecord {
  readonly birthDay: DayNumber | null;
  readonly timeline: PatientTimeline;
  readonly specimens: readonly RecordedSpecimen[];
  readonly signs: readonly RecordedSign[];
  readonly findings: readonly RecordedFinding[];
}

/** The record as determinations ask for it, on the day of the question. */
export function surveillanceOf(
  { birthDay, timeline, specimens, signs, findings }: CultureRecord,
  rules: WayRules,
  knownThrough: DayNumber,
): SurveillanceTimeline {
  return {
    ...recordedWay(timeline, rules),
    ...{ knownThrough, birthDay },
    deathDay: firstDayOf(findings, "death"),
    donorSupportFrom: firstDayOf(findings, "donor-support"),
    findings: findings.filter(stands).flatMap(findingFrom),
    specimens: specimens.filter(stands).map((one) => specimenFrom(one, rules.zone)),
    signs: signs.filter(stands).map(signFrom),
  };
}

function specimenFrom({ id, kind, collectedAt, method, status, organisms }: RecordedSpecimen, zone: Zone): Specimen {
  const collected = { day: zone.dayOf(collectedAt), at: collectedAt };
  return { id, kind, collected, method, status, organisms: organisms.map(organismFrom) };
}

function organismFrom({ id, name, group, count }: RecordedOrganism): GrownOrganism {
  return { id, name, identity: identityOf({ name, group }), count: readCount(count) };
}

function signFrom({ id, sign, day, at, finding, temperature, otherCause }: RecordedSign): Sign {
  return { id, sign, when: { day, at }, finding, temperature, otherCause };
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
