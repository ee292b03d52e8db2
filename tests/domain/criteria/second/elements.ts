import type { Story, StorySpecimen } from "../../../../src/domain/criteria/story.ts";
import { growsOneOf, organisms } from "./grown.ts";
import { type Chosen, tubeAt } from "./possible-worlds.ts";

export interface Admission {
  readonly first: number;
  readonly last: number;
  readonly isOver: boolean;
  /** The wards of every day in the order of the patient's way. */
  readonly wardsOn: ReadonlyMap<number, readonly number[]>;
}

/** Signs of SUTI 1, and of infants. */
export const ordinary = ["fever", "suprapubic-tenderness", "costovertebral-pain", "urgency", "frequency", "dysuria"];
export const ofInfants = ["fever", "cold", "apnea", "bradycardia", "lethargy", "vomiting", "suprapubic-tenderness"];

/** Blood that was taken for diagnosis and is not too late. */
function isTaken(one: StorySpecimen, { knownThrough = 60, died = 99 }: Story): boolean {
  return (
    one.method !== "screening" &&
    one.method !== "catheter-tip" &&
    one.status !== "withdrawn" &&
    one.day <= knownThrough &&
    one.day <= died
  );
}

export function isReported(one: StorySpecimen, story: Story): boolean {
  return isTaken(one, story) && one.status !== "pending" && one.status !== "preliminary";
}

export function bloodIn(
  story: Story,
  from: number,
  to: number,
  pathogens: readonly string[],
): { first: number; isWaiting: boolean } {
  const blood = (story.blood ?? []).filter((one) => isTaken(one, story) && one.day >= from && one.day <= to);
  const known = blood.filter((one) => isReported(one, story));
  const days = known.flatMap((one) =>
    growsOneOf(one, pathogens).flatMap((name) => {
      const others = known.filter(
        (other) => other !== one && Math.abs(other.day - one.day) < 2 && hasSame(other, name),
      );
      return !organisms[name]?.skin || others.length > 0 ? [one.day] : [];
    }),
  );
  const isWaiting = blood.some(
    (one) => !known.includes(one) || (one.grew ?? []).some(([name]) => organisms[name]?.is === "unknown"),
  );
  return { first: Math.min(99, ...days), isWaiting };
}

function hasSame({ grew = [] }: StorySpecimen, name: string): boolean {
  return grew.some(([other]) => organisms[name]?.same.includes(other));
}

/** The signs that were there, by name and day. */
export function signsThere(story: Story, chosen: Chosen): { name: string; day: number }[] {
  const { knownThrough = 60, died = 99 } = story;
  return (story.signs ?? []).flatMap((sign, i) => {
    const { day } = sign;
    if ((sign.finding ?? "present") !== "present" || day > knownThrough || day > died) return [];
    const doubt = chosen.doubtful.get(i);
    if (doubt !== undefined) return doubt === "none" ? [] : [{ name: doubt === "there" ? sign.sign : doubt, day }];
    const degrees = Number.parseFloat(sign.sign);
    if (!Number.isNaN(degrees)) {
      const isFahrenheit = sign.sign.endsWith("F");
      if (degrees > (isFahrenheit ? 100.4 : 38)) return [{ name: "fever", day }];
      return degrees < (isFahrenheit ? 96.8 : 36) ? [{ name: "cold", day }] : [];
    }
    if (["urgency", "frequency", "dysuria"].includes(sign.sign))
      return tubeAt(chosen, sign) === "out" ? [{ name: sign.sign, day }] : [];
    return sign.otherCause ? [] : [{ name: sign.sign, day }];
  });
}

interface Asked {
  readonly admission: Admission;
  readonly from: number;
  readonly to: number;
  readonly isInfant: boolean;
  readonly counts: (name: string, day: number) => boolean;
}

/** Whether a sign that matters might have been there, for all that anybody wrote down. */
export function unknownSign(story: Story, chosen: Chosen, { admission, from, to, isInfant, counts }: Asked): boolean {
  const { knownThrough: known = 60, died = 99 } = story;
  if (admission.isOver && from > admission.last) return false;
  const isDay = (day: number) => day >= from && day <= to && day <= known && day <= died;
  const written = (story.signs ?? []).filter(({ day, finding }) => isDay(day) && finding !== "not-recorded");
  const nameOf = (sign: string) => (Number.isNaN(Number.parseFloat(sign)) ? sign : "temperature");
  const looked = new Set<string>(
    written.filter(({ finding }) => finding !== "not-documented").map(({ sign }) => nameOf(sign)),
  );
  const wasLookedForAll = story.lookedFor !== false && (story.urine ?? []).some(({ day }) => isDay(day));
  const days = Array.from({ length: to - from + 1 }, (_, i) => from + i);
  const matters = [...ordinary, ...(isInfant ? ofInfants : [])].filter((name) => {
    if (name === "fever") return days.some((day) => counts(name, day));
    if (!["urgency", "frequency", "dysuria"].includes(name)) return true;
    return days.some((day) => tubeAt(chosen, { day }) !== "in");
  });
  const closes = Math.min(to, died, admission.isOver ? admission.last + 1 : to);
  if (known < closes) return matters.length > 0;
  if (wasLookedForAll) return false;
  // The chart was read for a day when a review names it and was made on that day or later.
  const wasRead = (name: string, day: number) =>
    (story.signs ?? []).some(({ sign, day: first, finding, through = first, read = through }) => {
      const isReview = finding === "not-documented" && nameOf(sign) === name && first <= known && first <= died;
      return isReview && first <= day && day <= through && day <= read;
    });
  return matters
    .map((name) => (name === "fever" || name === "cold" ? "temperature" : name))
    .some((name) => !looked.has(name) && !days.every((day) => day > closes || wasRead(name, day)));
}
