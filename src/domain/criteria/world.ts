import { eligibilityDays } from "../counting/eligibility-day.ts";
import type { DayNumber } from "../days/day-number.ts";
import { completedYears } from "./age.ts";
import { type CatheterSpan, uniteTouching } from "./catheter-span.ts";
import { doubtfulHours, leavesOpen, symptomsWithoutCatheter } from "./doubtful-hours.ts";
import type { Edition } from "./edition.ts";
import { episodesOf } from "./episodes.ts";
import type { CatheterTime, SurveillanceTimeline } from "./surveillance-timeline.ts";

/** An admission as the edition reads it: stays without a full facility day between them may be one. */
export interface Episode {
  /** The first day on an inpatient ward: hospital day 1. */
  readonly firstDay: DayNumber;
  /** The last day on an inpatient ward; the day of the question while the patient is there. */
  readonly lastDay: DayNumber;
  readonly isOver: boolean;
  readonly inpatientDays: ReadonlySet<DayNumber>;
  /** Time on inpatient wards in the order of the patient's way. */
  readonly wards: readonly { readonly wardId: number; readonly first: DayNumber; readonly last: DayNumber }[];
  readonly stayIds: readonly number[];
}

/** What may be unknown of a patient so that an answer may hang on it. */
export type Unknown = "age" | "removal" | "signs" | "setting";

/** One choice for all that is unknown. A determination that comes out the same in all worlds does not hang on it. */
export interface Choice {
  readonly age: number | null;
  readonly catheters: "least" | "most";
  readonly doubtfulSigns: "absent" | "present";
  readonly unknownWards: "inpatient" | "outpatient";
}

/** A timeline with nothing left unknown that a choice can settle. */
export interface World {
  readonly timeline: SurveillanceTimeline;
  readonly edition: Edition;
  readonly choice: Choice;
  readonly episodes: readonly Episode[];
  /** Completed years of age on a day. */
  ageOn(day: DayNumber): number;
  /** Urethral indwelling catheters with the days on which they were in place for any part. */
  readonly catheters: readonly CatheterSpan[];
  /** The eligibility day of every day of an episode that has one. */
  eligibility(episode: Episode): ReadonlyMap<DayNumber, number>;
}

/** Ages that stand for the groups that rules tell apart: infants, up to 65, older. */
const agesOfGroups = [0, 40, 80];

/** Every world of a timeline: one where nothing is unknown. The first is the one that a derivation is told by. */
export function worldsOf(timeline: SurveillanceTimeline, edition: Edition): World[] {
  const ages = timeline.birthDay === null ? agesOfGroups.toReversed() : [null];
  const worlds: World[] = [];
  for (const unknownWards of hasUnknownWard(timeline)
    ? (["inpatient", "outpatient"] as const)
    : (["inpatient"] as const)) {
    const episodes = episodesOf(timeline, edition.options, unknownWards);
    for (const age of ages) {
      for (const catheters of hasUnknownRemoval(timeline) ? (["least", "most"] as const) : (["least"] as const)) {
        for (const doubtfulSigns of hasDoubtfulSign(timeline)
          ? (["absent", "present"] as const)
          : (["absent"] as const)) {
          worlds.push(worldOf(timeline, edition, episodes, { age, catheters, doubtfulSigns, unknownWards }));
        }
      }
    }
  }
  return worlds;
}

function hasUnknownWard({ stays }: SurveillanceTimeline): boolean {
  return stays.some(({ wardTimes }) => wardTimes.some(({ setting }) => setting === null));
}

function hasUnknownRemoval({ catheters }: SurveillanceTimeline): boolean {
  return catheters.some(
    (one) => one.kind === "indwelling-urethral" && (one.latestEndDay !== null || isContradictory(one)),
  );
}

/** Removed before it was put in: one of the two is wrong. */
export function isContradictory({ start, end }: CatheterTime): boolean {
  if (start === null || end === null) return false;
  return end.day < start.day || (start.at !== null && end.at !== null && end.at < start.at);
}

/** A temperature without a value that a body can have, or a symptom whose hour, or that of a catheter, is not known. */
function hasDoubtfulSign({ signs, catheters }: SurveillanceTimeline): boolean {
  const hours = doubtfulHours(catheters);
  return signs.some(({ sign, finding, when }) => {
    if (finding !== "present") return false;
    const isHourOpen = symptomsWithoutCatheter.has(sign) && hours.some((hour) => leavesOpen(hour, when));
    return sign === "temperature" || when.at === null || isHourOpen;
  });
}

function worldOf(
  timeline: SurveillanceTimeline,
  edition: Edition,
  episodes: readonly Episode[],
  choice: Choice,
): World {
  const catheters = uniteTouching(timeline.catheters.flatMap((time) => spanOf(time, timeline, choice)));
  const known = new Map<Episode, ReadonlyMap<DayNumber, number>>();
  return {
    timeline,
    edition,
    choice,
    episodes,
    catheters,
    ageOn: (day) => choice.age ?? completedYears(timeline.birthDay ?? day, day),
    eligibility(episode) {
      const days = known.get(episode) ?? eligibilityOf(episode, catheters, edition);
      known.set(episode, days);
      return days;
    },
  };
}

function spanOf(time: CatheterTime, { knownThrough, stays }: SurveillanceTimeline, choice: Choice): CatheterSpan[] {
  if (time.kind !== "indwelling-urethral") return [];
  const earliest = Math.min(...stays.flatMap(({ wardTimes }) => wardTimes.map(({ start }) => start.day)), knownThrough);
  const first = time.start?.day ?? earliest;
  const end = time.end?.day ?? knownThrough;
  if (isContradictory(time)) {
    if (choice.catheters === "least") return [];
    // One of the two times is wrong, so nobody can tell an hour of these days.
    const days = { first: Math.min(first, end), last: Math.max(first, end) };
    return [{ ...days, isOpen: false, time: { ...time, start: null, end: null } }];
  }
  const last = choice.catheters === "most" ? Math.max(end, time.latestEndDay ?? end) : end;
  return last < first ? [] : [{ first, last, isOpen: time.end === null, time }];
}

function eligibilityOf(
  episode: Episode,
  catheters: readonly CatheterSpan[],
  { options }: Edition,
): ReadonlyMap<DayNumber, number> {
  const { firstDay, lastDay } = episode;
  const inpatientDays =
    options.absence === "goes-on"
      ? [{ first: firstDay, last: lastDay }]
      : [...episode.inpatientDays].map((day) => ({ first: day, last: day }));
  if (options.catheterDaysFrom === "insertion") {
    const earliest = Math.min(firstDay, ...catheters.map(({ first }) => first));
    if (earliest < firstDay) inpatientDays.push({ first: earliest, last: firstDay - 1 });
  }
  return eligibilityDays({ catheterDays: catheters.map(({ first, last }) => ({ first, last })), inpatientDays });
}
