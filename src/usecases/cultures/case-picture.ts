import type { readCase } from "../../../shared/api/cases.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import type { SurveillanceTimeline } from "../../domain/criteria/index.ts";
import type { LaboratoryWords } from "../../domain/cultures/laboratory-words.ts";
import { type DayNumber, dayText } from "../../domain/days/day-number.ts";
import type { PatientRecord } from "../../store/culture-records.ts";
import type { KeptDetermination } from "../../store/determinations.ts";
import { findingAnswer, signAnswer, specimenAnswer } from "./culture-answers.ts";

type Picture = OutputOf<typeof readCase>["picture"];

/** How far around a culture its picture reaches: a timeframe of 14 days on both sides, and the window before it. */
const reach = 17;

/** The days of a patient around a culture: everything that touches them, each thing whole. */
export function pictureOf(given: {
  readonly record: PatientRecord;
  readonly timeline: SurveillanceTimeline;
  readonly kept: KeptDetermination;
  /** What the patient's cultures are determined to be. */
  readonly others: readonly KeptDetermination[];
  readonly words: LaboratoryWords | undefined;
}): Picture {
  const { record, timeline, kept, others, words } = given;
  const [first, last] = [kept.day - reach, kept.day + reach];
  const touches = (from: DayNumber | null, to: DayNumber | null) => (from ?? first) <= last && (to ?? last) >= first;
  const within = ({ day }: { readonly day: DayNumber }) => touches(day, day);
  const dayOfSpecimen = new Map(timeline.specimens.map(({ id, collected }) => [id, collected.day]));
  const outcomes = new Map(others.map(({ caseId, outcome }) => [caseId, outcome === "gone" ? null : outcome]));
  return {
    ...{ first: dayText(first), last: dayText(last) },
    ...placesIn(timeline, touches),
    ...cathetersIn(record, timeline, touches),
    specimens: record.specimens.flatMap((one) => {
      const day = dayOfSpecimen.get(one.id);
      if (day === undefined || !within({ day })) return [];
      return [{ ...specimenAnswer(one, words), day: dayText(day), outcome: outcomes.get(one.id) ?? null }];
    }),
    signs: record.signs.filter(({ day, voidReason }) => voidReason === null && within({ day })).map(signAnswer),
    findings: record.findings
      .filter(({ day, voidReason }) => voidReason === null && within({ day }))
      .map(findingAnswer),
  };
}

type Touches = (from: DayNumber | null, to: DayNumber | null) => boolean;

function placesIn({ stays }: SurveillanceTimeline, touches: Touches): Pick<Picture, "stays" | "wards"> {
  const wards = stays.flatMap(({ id: stayId, wardTimes }) =>
    wardTimes
      .filter(({ start, end }) => touches(start.day, end?.day ?? null))
      .map(({ wardId, setting, start, end }) => {
        return { stayId, wardId, setting, ...spanText(start.day, end?.day ?? null), at: start.at ?? 0 };
      }),
  );
  const shown = stays.map(({ id: stayId, wardTimes, dischargeDay }) => {
    const first = wardTimes.length === 0 ? null : Math.min(...wardTimes.map(({ start }) => start.day));
    return { stayId, first, last: dischargeDay };
  });
  return {
    stays: shown
      .filter((one) => touches(one.first, one.last))
      .map(({ stayId, first, last }) => ({ stayId, ...spanText(first, last) })),
    wards: wards
      .sort((a, b) => (a.first ?? "").localeCompare(b.first ?? "") || a.at - b.at)
      .map(({ at: _, ...ward }) => ward),
  };
}

function cathetersIn(
  { timeline: { stays } }: PatientRecord,
  { catheters }: SurveillanceTimeline,
  touches: Touches,
): Pick<Picture, "catheters"> {
  const stayOf = new Map(stays.flatMap(({ id, catheters: own }) => own.map((one) => [one.id, id])));
  return {
    catheters: catheters
      .filter(({ start, end, latestEndDay }) => touches(start?.day ?? null, latestEndDay ?? end?.day ?? null))
      .map(({ id: catheterId, kind, start, end, latestEndDay }) => ({
        ...{ catheterId, stayId: stayOf.get(catheterId) ?? 0, kind },
        ...spanText(start?.day ?? null, end?.day ?? null),
        latestLast: latestEndDay === null ? null : dayText(latestEndDay),
      })),
  };
}

function spanText(first: DayNumber | null, last: DayNumber | null) {
  return { first: first === null ? null : dayText(first), last: last === null ? null : dayText(last) };
}
