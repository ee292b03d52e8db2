import type { Determination } from "./determination.ts";
import type { Edition, EditionOptions } from "./edition.ts";
import { hasQuickReturn } from "./episodes.ts";
import type { GrownOrganism, SurveillanceTimeline } from "./surveillance-timeline.ts";
import type { World } from "./world.ts";

/** What is known when another reading is considered. */
interface Known {
  readonly timeline: SurveillanceTimeline;
  readonly edition: Edition;
  /** A world of the timeline, for its admissions and catheters. */
  readonly world: World;
  readonly determined: readonly Determination[];
}

/**
 * Whether another reading of an option can change anything of a patient. A quick look that never says no where it can:
 * trying a reading costs a determination, and most patients have nothing that a point is about.
 */
export function couldMatter(option: keyof EditionOptions, known: Known): boolean {
  return known.determined.length > 0 && (checks[option]?.(known) ?? true);
}

const checks: Readonly<Partial<Record<keyof EditionOptions, (known: Known) => boolean>>> = {
  // SUTI 1 takes this sign at any age, so the list of SUTI 2 changes nothing.
  costovertebralInInfants: () => false,
  catheterDaysFrom: ({ timeline, world }) => {
    const first = Math.max(...world.episodes.map(({ firstDay }) => firstDay));
    return hasCatheter(timeline, ({ start }) => start === null || start.day < first);
  },
  absence: ({ timeline, world }) =>
    hasCatheter(timeline, () => true) &&
    (hasUnknownWard(timeline) ||
      world.episodes.some(({ firstDay, lastDay, inpatientDays }) => inpatientDays.size < lastDay - firstDay + 1)),
  yeastCountsAsSpecies: ({ timeline }) =>
    hasUrine(timeline, (grew) => grew.length > 2 && grew.some(({ identity: { group } }) => isYeastOrUnknown(group))),
  sameSpeciesTwice: ({ timeline }) => hasUrine(timeline, (grew) => grew.length > 2),
  abutiCommensals: ({ timeline }) =>
    timeline.specimens.some(
      ({ kind, organisms }) => kind === "blood" && organisms.some(({ identity }) => identity.isCommensal),
    ),
  urgencyOnRemovalDay: ({ timeline, edition, determined }) => {
    const isNear = (day: number | undefined | null) =>
      typeof day === "number" &&
      determined.some(({ subject }) => Math.abs(subject.day - day) <= edition.options.windowDays + 1);
    return (
      edition.urgencyNeedsNoCatheter &&
      hasCatheter(timeline, ({ start, end, latestEndDay }) => {
        return [start?.day, end?.day, latestEndDay, timeline.knownThrough].some(isNear);
      })
    );
  },
  timeframeAcrossStays: ({ timeline, determined }) => timeline.stays.length > 1 && determined.length > 1,
  elementInsideTimeframe: ({ determined }) => determined.length > 1,
  repeatDays: ({ timeline, determined }) => determined.length > 1 || hasBlood(timeline),
  bloodstreamPeriodFrom: ({ timeline, edition }) => edition.bloodstream !== null && hasBlood(timeline),
  readmission: ({ timeline }) => hasUnknownWard(timeline) || hasQuickReturn(timeline),
  infantAge: ({ timeline: { birthDay }, determined }) =>
    birthDay === null || determined.some(({ subject }) => subject.day - birthDay < 3 * 366),
  earlyFeverOver65: ({ timeline: { birthDay, signs }, determined }) =>
    (birthDay === null || determined.some(({ subject }) => subject.day - birthDay > 64 * 365)) &&
    signs.some(({ sign, finding }) => sign === "temperature" && finding === "present"),
  lookedFor: ({ determined }) =>
    determined.some(({ outcome, event }) => event?.criterion === "abuti" || !certain.has(outcome)),
  undocumented: ({ timeline }) => timeline.signs.some(({ review }) => review !== null),
  afterDeath: ({ timeline }) => timeline.deathDay !== null,
};

/** Outcomes that rest on no sign that was looked for and absent. */
const certain = new Set(["event", "excluded", "negative", "pending", "set-aside"]);

function isYeastOrUnknown(group: string | null): boolean {
  return group === null || group === "yeast-or-mold";
}

function hasUrine({ specimens }: SurveillanceTimeline, fits: (grew: readonly GrownOrganism[]) => boolean): boolean {
  return specimens.some(({ kind, organisms }) => kind === "urine" && fits(organisms));
}

function hasBlood({ specimens }: SurveillanceTimeline): boolean {
  return specimens.some(({ kind }) => kind === "blood");
}

function hasCatheter(
  { catheters }: SurveillanceTimeline,
  fits: (catheter: SurveillanceTimeline["catheters"][0]) => boolean,
): boolean {
  return catheters.some((one) => one.kind === "indwelling-urethral" && fits(one));
}

function hasUnknownWard({ stays }: SurveillanceTimeline): boolean {
  return stays.some(({ wardTimes }) => wardTimes.some(({ setting }) => setting === null));
}
