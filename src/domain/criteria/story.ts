import {
  type SignName,
  type SpecimenMethod,
  type SpecimenStatus,
  signName,
  type UrineFinding,
} from "../../../shared/culture-words.ts";
import type { CatheterKind, WardSetting } from "../../../shared/vocabulary.ts";
import { type DayNumber, dayMs } from "../days/day-number.ts";
import { matchOrganism } from "./match-organism.ts";
import { readCount } from "./read-count.ts";
import type { CatheterTime, Moment, Sign, Specimen, SurveillanceTimeline, WardTime } from "./surveillance-timeline.ts";
import { readTemperature } from "./temperature.ts";

/** A specimen of a story: what grew, each with its count as a laboratory writes it. */
export interface StorySpecimen {
  readonly day: number;
  readonly grew?: readonly (readonly [name: string, count: string | null])[];
  readonly status?: SpecimenStatus;
  readonly method?: SpecimenMethod;
}

export interface StorySign {
  readonly day: number;
  /** A temperature such as `38.4`, or the name of another sign. */
  readonly sign: SignName | `${number}` | `${number} F`;
  readonly hour?: number;
  readonly finding?: Sign["finding"];
  readonly otherCause?: boolean;
  /** Of a chart review (`not-documented`): its last day, and the day on which the chart was read; both else `day`. */
  readonly through?: number;
  readonly read?: number;
}

/** A patient in a few words. Day 1 is the first day of March 2024; what is left out has the value of `plainPatient`. */
export interface Story {
  readonly ageYears?: number | null;
  /** Ward, first day, last day (null: still there), and what the ward is. */
  readonly wards?: readonly (readonly [ward: number, from: number, to: number | null, setting?: WardSetting | null])[];
  /** A new stay begins with the ward times from this index on, for each entry. */
  readonly newStayAt?: readonly number[];
  readonly discharged?: boolean;
  /** The day of admission of the first stay; left out: that of its first ward. */
  readonly admitted?: number;
  /** First and last day; null: in place on arrival, still in place. */
  readonly catheters?: readonly (readonly [from: number | null, to: number | null, kind?: CatheterKind])[];
  /** The last day on which the last catheter may still have been in place. */
  readonly latestRemoval?: number;
  /** Hours of the removal of the last catheter: after the one on its last day, before the other on the latest day. */
  readonly removedBetween?: readonly [after: number, before: number];
  /** true: the hour at which the last catheter was inserted is not known. */
  readonly insertedWithoutHour?: boolean;
  readonly urine?: readonly StorySpecimen[];
  readonly blood?: readonly StorySpecimen[];
  readonly signs?: readonly StorySign[];
  readonly findings?: readonly (readonly [day: number, finding: UrineFinding])[];
  /** false: nobody looked for any sign that is not told. Otherwise all were looked for on the days of urine. */
  readonly lookedFor?: boolean;
  readonly died?: number;
  readonly donorSupportFrom?: number;
  readonly knownThrough?: number;
}

/** The day before day 1 of every story: 2024-02-29. */
const dayZero: DayNumber = Date.UTC(2024, 1, 29) / dayMs;
const hourMs = 3_600_000;

/** The facility day of a day of a story. */
export function storyDay(day: number): DayNumber {
  return dayZero + day;
}

/** The timeline that a story tells. */
export function timelineOf(story: Story): SurveillanceTimeline {
  const specimens = [
    ...(story.urine ?? []).map((one, i) => specimenOf("urine", one, 1 + i)),
    ...(story.blood ?? []).map((one, i) => specimenOf("blood", one, 101 + i)),
  ];
  const age = story.ageYears === undefined ? 54 : story.ageYears;
  const dayOrNull = (day: number | undefined) => (day === undefined ? null : storyDay(day));
  return {
    knownThrough: storyDay(story.knownThrough ?? 60),
    birthDay: age === null ? null : Math.floor(storyDay(1) - age * 365.25 - 30),
    deathDay: dayOrNull(story.died),
    donorSupportFrom: dayOrNull(story.donorSupportFrom),
    stays: staysOf(story),
    catheters: cathetersOf(story),
    specimens,
    signs: signsOf(story),
    findings: (story.findings ?? []).map(([day, finding], i) => ({
      id: 1 + i,
      finding,
      when: onDay(day),
      present: true,
      cellsPerMm3: null,
    })),
  };
}

function onDay(day: number, hour?: number): Moment {
  return { day: storyDay(day), at: hour === undefined ? null : storyDay(day) * dayMs + hour * hourMs };
}

function staysOf({
  wards = [[1, 1, null]],
  newStayAt = [],
  discharged,
  admitted,
}: Story): SurveillanceTimeline["stays"] {
  const bounds = [0, ...newStayAt, wards.length];
  return bounds.slice(1).map((end, i) => {
    const parts = wards.slice(bounds[i], end);
    const wardTimes = parts.map(([wardId, from, to, setting = "inpatient"], order): WardTime => {
      // Later places of a day begin later in it: each has its own hour.
      const start = onDay(from, 8 + order);
      return { wardId, setting, start, end: to === null ? null : onDay(to, 9 + order) };
    });
    const last = wardTimes.at(-1)?.end ?? null;
    const left = last !== null && (discharged ?? true);
    const from = (i === 0 ? admitted : undefined) ?? parts[0]?.[1] ?? 1;
    return { id: 1 + i, admissionDay: storyDay(from), wardTimes, dischargeDay: left ? last.day : null };
  });
}

function cathetersOf({ catheters = [], latestRemoval, removedBetween, insertedWithoutHour }: Story): CatheterTime[] {
  return catheters.map(([from, to, kind = "indwelling-urethral"], i) => {
    const isLast = i === catheters.length - 1;
    const end = to === null ? null : onDay(to, 12);
    const [after, before] = removedBetween ?? [];
    const between = { after: onDay(to ?? 0, after).at ?? 0, before: onDay(latestRemoval ?? to ?? 0, before).at ?? 0 };
    return {
      id: 1 + i,
      kind,
      start: from === null ? null : onDay(from, isLast && insertedWithoutHour ? undefined : 9),
      end: end && isLast && removedBetween ? { ...end, at: null, between } : end,
      latestEndDay: latestRemoval !== undefined && isLast ? storyDay(latestRemoval) : null,
    };
  });
}

function specimenOf(kind: Specimen["kind"], told: StorySpecimen, id: number): Specimen {
  const { day, grew = [], status = "final", method = "culture" } = told;
  const organisms = grew.map(([name, count], i) => ({
    id: id * 10 + i,
    name,
    identity: matchOrganism(name) ?? { key: name, group: null, genus: null },
    count: readCount(count),
  }));
  return { id, kind, collected: onDay(day, 10), method, status, organisms };
}

function signsOf(story: Story): Sign[] {
  const told = (story.signs ?? []).map((one, i): Sign => {
    const { day, sign, hour, finding = "present", otherCause = false, through = day, read = through } = one;
    const named = signName.safeParse(sign);
    const review = finding === "not-documented" ? { lastDay: storyDay(through), readDay: storyDay(read) } : null;
    const rest = { id: 1 + i, when: onDay(day, hour), finding, otherCause, review };
    if (named.success) return { ...rest, sign: named.data, temperature: null };
    return { ...rest, sign: "temperature", temperature: readTemperature(sign) };
  });
  if (story.lookedFor === false) return told;
  const days = new Set([...(story.urine ?? []).map(({ day }) => day), ...(story.findings ?? []).map(([day]) => day)]);
  const absent = [...days].flatMap((day) =>
    signName.options.map((sign): Omit<Sign, "id"> => {
      return { sign, when: onDay(day), finding: "absent", temperature: null, otherCause: false, review: null };
    }),
  );
  return [...told, ...absent.map((one, i) => ({ ...one, id: 1001 + i }))];
}
