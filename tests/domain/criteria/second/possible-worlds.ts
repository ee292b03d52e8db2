import type { Story, StorySign } from "../../../../src/domain/criteria/story.ts";

/** Days on which a catheter was in place for any part; `told`: somebody wrote down when it was put in. */
interface Tube {
  readonly from: number;
  readonly to: number;
  readonly lastSeen: number | null;
  readonly told: boolean;
  /** Removed before it was put in. */
  readonly isBroken?: boolean;
  /** Put in at an hour that nobody wrote down. */
  readonly anyHour?: boolean;
  /** Hours between which it came out: after the one on the day it was last seen, before the other on the latest day. */
  readonly hours?: { readonly after: number; readonly before: number; readonly latest: number } | undefined;
}

/** A story with every unknown chosen: an age, the days of catheters, the signs that were there, the inpatient days. */
export interface Chosen {
  readonly age: number;
  readonly tubes: readonly Tube[];
  /** For each ward time of the story: whether it was on an inpatient ward. */
  readonly inpatient: readonly boolean[];
  /** What a sign of which nobody knows enough was: its index to `none`, `fever`, `cold` or `there`. */
  readonly doubtful: ReadonlyMap<number, "none" | "fever" | "cold" | "there">;
}

/** Every way in which the unknown of a story can be filled in. */
export function* possibleWorlds(story: Story): Generator<Chosen> {
  for (const age of story.ageYears === null ? [0, 1, 2, 40, 65, 66, 90] : [story.ageYears ?? 54]) {
    for (const inpatient of settingsOf(story)) {
      for (const tubes of tubesOf(story)) yield* withSigns(story, { age, tubes, inpatient });
    }
  }
}

export function* settingsOf(story: Story): Generator<boolean[]> {
  const settings = (story.wards ?? []).map(([, , , setting]) => (setting === undefined ? "inpatient" : setting));
  const open = settings.flatMap((setting, i) => (setting === null ? [i] : []));
  for (let bits = 0; bits < 2 ** open.length; bits++) {
    yield settings.map((setting, i) =>
      setting === null ? (bits >> open.indexOf(i)) % 2 === 1 : setting === "inpatient",
    );
  }
}

export function* tubesOf(story: Story): Generator<Chosen["tubes"]> {
  const known = story.knownThrough ?? 60;
  const arrival = Math.min(...(story.wards ?? []).map(([, from]) => from), known);
  const all = (story.catheters ?? []).map(([from, to, kind]) => ({
    from: from ?? arrival,
    to,
    kind,
    told: from !== null,
  }));
  const tubes = all.flatMap(({ from, to, kind, told }, i) => {
    if (kind !== undefined && kind !== "indwelling-urethral") return [];
    const isLast = i === all.length - 1;
    const latest = isLast ? story.latestRemoval : undefined;
    const [after = 0, before = 0] = story.removedBetween ?? [];
    const hours = isLast && story.removedBetween && to !== null ? { after, before, latest: latest ?? to } : undefined;
    const anyHour = isLast && story.insertedWithoutHour === true;
    return [{ from, to: to ?? known, lastSeen: to, latest, told, hours, anyHour }];
  });
  const last = tubes.at(-1);
  const hasDoubt = last?.latest !== undefined && all.length > 0 && all.at(-1)?.from === last.from;
  const ends = hasDoubt ? range(last.to, Math.max(last.to, last.latest ?? 0)) : [last?.to ?? 0];
  for (const end of ends) {
    const chosen = tubes.map((tube, i) => (i === tubes.length - 1 ? { ...tube, to: end } : tube));
    // Removed before it was put in: it may never have been there, or on all days between.
    const broken = chosen.filter((tube) => tube.told && tube.lastSeen !== null && tube.lastSeen < tube.from);
    const sound = chosen.filter((tube) => !broken.includes(tube) && tube.to >= tube.from);
    yield sound;
    if (broken.length > 0)
      yield [
        ...sound,
        ...broken.map((tube) => ({
          from: tube.lastSeen ?? 0,
          to: tube.from,
          lastSeen: null,
          told: false,
          isBroken: true,
        })),
      ];
  }
}

function range(from: number, to: number): number[] {
  return Array.from({ length: to - from + 1 }, (_, i) => from + i);
}

function* withSigns(story: Story, rest: Omit<Chosen, "doubtful">): Generator<Chosen> {
  const open = (story.signs ?? []).flatMap((sign, i) => {
    const choices = choicesOf(sign, rest);
    return choices === null ? [] : [{ i, choices }];
  });
  const total = open.reduce((product, { choices }) => product * choices.length, 1);
  for (let number = 0; number < total; number++) {
    let left = number;
    const doubtful = new Map<number, "none" | "fever" | "cold" | "there">();
    for (const { i, choices } of open) {
      doubtful.set(i, choices[left % choices.length] ?? "none");
      left = Math.floor(left / choices.length);
    }
    yield { ...rest, doubtful };
  }
}

function choicesOf(
  sign: StorySign,
  chosen: Omit<Chosen, "doubtful">,
): readonly ("none" | "fever" | "cold" | "there")[] | null {
  if ((sign.finding ?? "present") !== "present") return null;
  if (sign.sign === "temperature") return ["none", "fever", "cold"];
  const degrees = Number.parseFloat(sign.sign);
  if (!Number.isNaN(degrees)) {
    const celsius = sign.sign.endsWith("F") ? (degrees - 32) / 1.8 : degrees;
    return celsius > 13 && celsius < 46 ? null : ["none", "fever", "cold"];
  }
  if (!["urgency", "frequency", "dysuria"].includes(sign.sign)) return null;
  return tubeAt(chosen, sign) === "unknown" ? ["none", "there"] : null;
}

/** Whether a catheter was in place at the hour of a sign; put in at 9 o'clock, taken out at 12. */
export function tubeAt(
  { tubes }: Pick<Chosen, "tubes">,
  { day, hour }: Pick<StorySign, "day" | "hour">,
): "in" | "out" | "unknown" {
  let answer: "in" | "out" | "unknown" = "out";
  // Without an hour, one of every stretch between the hours at which catheters come and go.
  const hours = hour === undefined ? [0, 5, 8, 9, 10, 11, 12, 15, 19, 23] : [hour];
  const states = new Set(hours.map((at) => tubes.map((tube) => stateAt(tube, day, at))).map(best));
  if (states.has("unknown") || states.size > 1) answer = "unknown";
  else if (states.has("in")) answer = "in";
  return answer;
}

function best(states: readonly ("in" | "out" | "unknown")[]): "in" | "out" | "unknown" {
  if (states.includes("in")) return "in";
  return states.includes("unknown") ? "unknown" : "out";
}

function stateAt(tube: Tube, day: number, hour: number): "in" | "out" | "unknown" {
  if (day < tube.from || day > tube.to) return "out";
  if (day === tube.from && tube.told && (tube.anyHour || hour < 9)) {
    const isLeft = atEnd(tube, day, hour) === "out";
    return tube.anyHour && !isLeft ? "unknown" : "out";
  }
  return atEnd(tube, day, hour);
}

function atEnd(tube: Tube, day: number, hour: number): "in" | "out" | "unknown" {
  if (tube.lastSeen === null || day < tube.to) return "in";
  if (tube.hours) {
    if (day === tube.lastSeen && hour <= tube.hours.after) return "in";
    return day === tube.hours.latest && hour >= tube.hours.before ? "out" : "unknown";
  }
  // On the last day that is possible but was not seen nobody knows the hour.
  if (tube.lastSeen !== tube.to) return "unknown";
  return hour < 12 ? "in" : "out";
}
