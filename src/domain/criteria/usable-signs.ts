import { signNames } from "../../../shared/culture-words.ts";
import { type DayNumber, daysFromTo } from "../days/day-number.ts";
import type { Evidence } from "./determination.ts";
import { symptomsWithoutCatheter } from "./doubtful-hours.ts";
import { dayListWords, daysWords, dayWords, listWords } from "./in-words.ts";
import { criterionSignsOf, type LookedFor } from "./looked-for.ts";
import type { CriterionFacts, CriterionSign } from "./rule-kinds.ts";
import { couldFeelUrgency, type DatedSign, isTooLate, temperatureSign } from "./signs-in-window.ts";
import type { Sign } from "./surveillance-timeline.ts";
import { temperatureText } from "./temperature.ts";

/** Signs of SUTI 1: those with a catheter and those without are the same, but for fever of the old. */
export const suti1Signs: readonly CriterionSign[] = [
  "fever",
  "suprapubic-tenderness",
  "costovertebral-pain",
  "urgency",
  "frequency",
  "dysuria",
];

/** The signs of the window of a list, in the order of days, that may be used at the patient's age. */
export function usableSigns(facts: CriterionFacts, list: readonly CriterionSign[]): DatedSign[] {
  return facts.signs.present.filter(
    ({ sign, day }) => list.includes(sign) && (sign !== "fever" || isFeverUsable(facts, day)),
  );
}

/** Fever of old patients is an element only where the catheter was eligible on the day that it would date. */
function isFeverUsable(facts: CriterionFacts, day: DayNumber): boolean {
  const { world, episode, anchor } = facts;
  const { feverNeedsCatheterFrom } = world.edition;
  if (feverNeedsCatheterFrom === null || world.ageOn(day) < feverNeedsCatheterFrom) return true;
  return isAssociated(facts, world.edition.date.dateOf(Math.min(day, anchor.day), episode));
}

/** Whether fever would be an element on some day of the window. */
export function couldHaveFever(facts: CriterionFacts): boolean {
  const { usableFrom, last } = facts.window;
  return daysFromTo(usableFrom, last).some((day) => isFeverUsable(facts, day));
}

/** Whether an infection of this date would be device-associated by the edition. */
export function isAssociated({ world, episode }: CriterionFacts, dateOfEvent: DayNumber): boolean {
  return world.edition.device.isAssociated(dateOfEvent, episode, world);
}

/** The day of the first element: the first sign, or the anchor where the edition dates by it and it comes first. */
export function firstElementDay({ world, anchor }: CriterionFacts, elementDays: readonly DayNumber[]): DayNumber {
  const days = world.edition.date.anchorDates ? [anchor.day, ...elementDays] : elementDays;
  return Math.min(...days);
}

/** The date of event that elements on these days would give. */
export function dateOf(facts: CriterionFacts, elementDays: readonly DayNumber[]): DayNumber {
  return facts.world.edition.date.dateOf(firstElementDay(facts, elementDays), facts.episode);
}

/**
 * Signs of a list that might have been there, for all that the record says: nobody looked for them, or the window is not
 * over. Empty when "there was none" is known.
 */
export function unknownSigns(facts: CriterionFacts, list: readonly CriterionSign[]): CriterionSign[] {
  const { world, window, signs, episode } = facts;
  // After discharge nobody has a duty to look (CDC Patient Safety Component Manual, chapter 7, opening pages).
  if (episode.isOver && window.usableFrom > episode.lastDay) return [];
  const needed = list.filter((sign) => {
    if (sign === "fever") return couldHaveFever(facts);
    if (symptomsWithoutCatheter.has(sign)) return couldFeelUrgency(world, window);
    return true;
  });
  return signs.openUntil === null ? needed.filter((sign) => !signs.lookedFor.known.has(sign)) : needed;
}

const criterionSignNames: Readonly<Record<CriterionSign, string>> = {
  ...signNames,
  fever: "Fever",
  hypothermia: "Hypothermia",
};

/** `fever, urgency or dysuria`. */
export function signsWords(list: readonly CriterionSign[], join: "and" | "or" = "or"): string {
  return listWords(
    list.map((sign) => criterionSignNames[sign].toLowerCase()),
    join,
  );
}

/** What to look up about signs that nobody looked for, or what to wait for. */
export function lookUpSigns({ signs, window }: CriterionFacts, unknown: readonly CriterionSign[]): string {
  if (signs.openUntil !== null) return `Wait until ${dayWords(signs.openUntil)} is over: signs up to then count.`;
  const days = openDaysWords(unknown, signs.lookedFor) ?? `${dayWords(window.usableFrom)} to ${dayWords(window.last)}`;
  return `Review the chart of ${days} for ${signsWords(unknown)}, and record what is documented.`;
}

/** The days that reviews of these signs leave open; null where one of them was not reviewed at all. */
function openDaysWords(unknown: readonly CriterionSign[], { reviewedInPart }: LookedFor): string | null {
  const open = unknown.map((sign) => reviewedInPart.get(sign));
  if (open.some((days) => days === undefined)) return null;
  return dayListWords(open.flatMap((days) => days ?? []).sort((a, b) => a - b));
}

/** The chart reviews by which signs of a list are known, as evidence. */
export function undocumentedEvidence({ signs }: CriterionFacts, list: readonly CriterionSign[]): Evidence[] {
  const ids = list.flatMap((sign) => signs.lookedFor.undocumented.get(sign) ?? []).map(({ id }) => id);
  return [...new Set(ids)].map((id) => ({ kind: "sign", id }));
}

/** ` … is not documented in the chart, read on 14 March 2024 …` for signs known by a chart review alone; else nothing. */
export function undocumentedWords({ signs }: CriterionFacts, list: readonly CriterionSign[]): string {
  const { undocumented } = signs.lookedFor;
  const named = list.filter((sign) => undocumented.has(sign));
  if (named.length === 0) return "";
  const reviews = named.flatMap((sign) => undocumented.get(sign) ?? []);
  const days = reviews.map(({ readDay }) => readDay).sort((a, b) => a - b);
  const verb = named.length === 1 ? "is" : "are";
  const text = `${signsWords(named, "and")} ${verb} not documented in the chart, which was read on ${dayListWords(days)}`;
  return ` ${text.charAt(0).toUpperCase()}${text.slice(1)}: an undocumented sign is not an element.`;
}

/** ` A chart review does not cover …` for signs that one covers in part; else nothing. */
export function inPartWords({ signs }: CriterionFacts, unknown: readonly CriterionSign[]): string {
  const open = unknown.flatMap((sign) => signs.lookedFor.reviewedInPart.get(sign) ?? []).sort((a, b) => a - b);
  return open.length === 0 ? "" : ` The chart was not reviewed for ${dayListWords(open)}.`;
}

/** The recorded sign that came nearest to being an element: set aside in the window, or just outside of it. */
export function nearestSign(facts: CriterionFacts, list: readonly CriterionSign[]): string | null {
  const [setAside] = facts.signs.setAside;
  if (setAside) return `Nearest: ${setAside}.`;
  const old = facts.signs.present.find(
    ({ sign, day }) => sign === "fever" && list.includes(sign) && !isFeverUsable(facts, day),
  );
  if (old) return `Nearest: ${old.text}, which at an age over 65 counts only with an eligible catheter.`;
  const outside = outsideSigns(facts, list);
  return outside[0]?.text ?? null;
}

function outsideSigns({ world, window }: CriterionFacts, list: readonly CriterionSign[]) {
  const found = world.timeline.signs.flatMap((sign) => {
    const named = sign.finding === "present" && !isTooLate(world, sign.when.day) ? nameOf(sign) : null;
    if (named === null || !list.includes(named.sign)) return [];
    const { day } = sign.when;
    if (day < window.usableFrom) {
      const distance = window.usableFrom - day;
      return [{ distance, day, text: outsideText(named.text, day, `${daysWords(distance)} before the window opened`) }];
    }
    if (day <= window.last) return [];
    const distance = day - window.last;
    return [{ distance, day, text: outsideText(named.text, day, `${daysWords(distance)} after the window closed`) }];
  });
  return found.sort((a, b) => a.distance - b.distance || a.day - b.day);
}

function outsideText(what: string, day: DayNumber, where: string): string {
  return `Nearest: ${what} on ${dayWords(day)} lies ${where}.`;
}

function nameOf(sign: Sign): { sign: CriterionSign; text: string } | null {
  const [named] = criterionSignsOf(sign);
  if (named === undefined) return null;
  if (named !== "fever") return { sign: named, text: criterionSignNames[named].toLowerCase() };
  const name = temperatureSign(sign);
  if (name === null || sign.temperature === null) return null;
  return { sign: name, text: `a temperature of ${temperatureText(sign.temperature)}` };
}

/** The signs as evidence. */
export function signEvidence(signs: readonly DatedSign[]): Evidence[] {
  return signs.map(({ id }) => ({ kind: "sign", id }));
}
