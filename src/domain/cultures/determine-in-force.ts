import { type Determination, determine, type SurveillanceTimeline } from "../criteria/index.ts";
import { type EditionFamily, editionInForce } from "../editions/index.ts";

/**
 * What a family of editions says of a patient: each subject by the edition that was in force on its own day, so that a
 * new edition changes nothing of what lies before it. In the order of days.
 */
export function determineInForce(timeline: SurveillanceTimeline, family: EditionFamily): Determination[] {
  const days = [
    ...timeline.specimens.map(({ collected }) => collected.day),
    ...timeline.findings.map((f) => f.when.day),
  ];
  const editions = [...new Set(days.map((day) => editionInForce(family, day)))];
  return editions
    .flatMap((edition) =>
      determine(timeline, edition).filter(({ subject }) => editionInForce(family, subject.day) === edition),
    )
    .sort((a, b) => a.subject.day - b.subject.day);
}
