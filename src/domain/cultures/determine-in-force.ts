import { type Determination, determineWithHinges, type SurveillanceTimeline } from "../criteria/index.ts";
import type { DayNumber } from "../days/day-number.ts";
import { type EditionFamily, editionInForce } from "../editions/index.ts";
import { type ReadOn, readingsOf } from "../editions/readings.ts";

/**
 * What a family of editions says of a patient: each subject by the edition that was in force on its own day, so that a
 * new edition changes nothing of what lies before it. In the order of days.
 */
export function determineInForce(
  timeline: SurveillanceTimeline,
  family: EditionFamily,
  readOn: ReadOn = readingsOf([]),
): Determination[] {
  const inForce = (day: DayNumber) => readOn(editionInForce(family, day), day);
  const days = [
    ...timeline.specimens.map(({ collected }) => collected.day),
    ...timeline.findings.map((f) => f.when.day),
  ];
  const editions = [...new Set(days.map((day) => inForce(day)))];
  return editions
    .flatMap((edition) =>
      determineWithHinges(timeline, edition).filter(({ subject }) => inForce(subject.day) === edition),
    )
    .sort((a, b) => a.subject.day - b.subject.day);
}
