import { signNames } from "../../../shared/culture-words.ts";
import type { DayNumber } from "../days/day-number.ts";
import { catheterAt } from "./catheter-at.ts";
import { symptomsWithoutCatheter } from "./doubtful-hours.ts";
import { dayWords } from "./in-words.ts";
import { criterionSignsOf, type LookedFor, lookedForIn } from "./looked-for.ts";
import type { CriterionSign, Window } from "./rule-kinds.ts";
import type { Sign } from "./surveillance-timeline.ts";
import { comparedTo, isHuman, temperatureText } from "./temperature.ts";
import type { Episode, World } from "./world.ts";

/** In hundredths of °C. Fever is hotter, hypothermia colder. Source: CDC Patient Safety Component Manual, chapter 7. */
const feverAbove = 3_800;
const hypothermiaBelow = 3_600;

/** A sign that was there, on a day; usable as far as the sign itself goes. */
export interface DatedSign {
  readonly sign: CriterionSign;
  readonly day: DayNumber;
  readonly id: number;
  readonly text: string;
}

/** What is known of the signs of a window. */
export interface WindowSigns {
  /** In the order of days. */
  readonly present: readonly DatedSign[];
  /** Recorded in the window, but nothing that counts; with the reason as a sentence. */
  readonly setAside: readonly string[];
  /** Which signs are known not to have been there, and by what. */
  readonly lookedFor: LookedFor;
  /** The day until which signs can still come; null once nothing new can. */
  readonly openUntil: DayNumber | null;
  /** The last day of the window on which a sign can be: no later than death, and than the day after a discharge. */
  readonly closesOn: DayNumber;
}

/** The signs of a window in one world. */
export function signsInWindow(world: World, episode: Episode, window: Window): WindowSigns {
  const { timeline } = world;
  const closes = closingDay(world, episode, window);
  const present: DatedSign[] = [];
  const setAside: string[] = [];
  const told = timeline.signs.filter((sign) => tellsOf(sign, window, world));
  for (const sign of told) {
    const judged = judge(sign, world);
    present.push(...judged.present);
    if (judged.setAside) setAside.push(judged.setAside);
  }
  present.sort((a, b) => a.day - b.day || a.id - b.id);
  const lookedFor = lookedForIn(told, { first: window.usableFrom, last: closes }, world);
  return { present, setAside, lookedFor, openUntil: timeline.knownThrough < closes ? closes : null, closesOn: closes };
}

/** Whether something lies behind the day of the question, or behind death where the edition takes nothing from there. */
export function isTooLate({ timeline, edition }: World, day: DayNumber): boolean {
  if (day > timeline.knownThrough) return true;
  return edition.options.afterDeath === "not-used" && timeline.deathDay !== null && day > timeline.deathDay;
}

/** After death nothing comes, and after the day behind a discharge nobody has a duty to look. */
function closingDay({ timeline }: World, episode: Episode, window: Window): DayNumber {
  return Math.min(window.last, timeline.deathDay ?? window.last, episode.isOver ? episode.lastDay + 1 : window.last);
}

/** Whether a sign says something of a day of the window; a chart review that begins before it may. */
function tellsOf({ when, finding, review }: Sign, { usableFrom, last }: Window, world: World): boolean {
  if (finding === "not-recorded" || when.day > last || isTooLate(world, when.day)) return false;
  return (review?.lastDay ?? when.day) >= usableFrom;
}

interface Judged {
  readonly present: readonly DatedSign[];
  readonly setAside: string | null;
}

const nothing: Judged = { present: [], setAside: null };

function judge(sign: Sign, world: World): Judged {
  const [name] = criterionSignsOf(sign);
  if (sign.finding !== "present" || name === undefined) return nothing;
  if (name === "fever" || name === "hypothermia") return judgeTemperature(sign, world);
  return judgeOther(sign, name, world);
}

function judgeTemperature(sign: Sign, world: World): Judged {
  const { id, temperature, when, otherCause } = sign;
  const isCausedOtherwise = otherCause && world.edition.otherCauseForAll;
  if (temperature === null || !isHuman(temperature)) {
    if (isCausedOtherwise || world.choice.doubtfulSigns === "absent") return nothing;
    const text = `a temperature that cannot be read on ${dayWords(when.day)}`;
    return { present: criterionSignsOf(sign).map((name) => ({ sign: name, day: when.day, id, text })), setAside: null };
  }
  const text = `a temperature of ${temperatureText(temperature)} on ${dayWords(when.day)}`;
  const name = temperatureSign(sign);
  if (name === null) return { present: [], setAside: `${text} is neither above 38.0 °C nor below 36.0 °C` };
  if (isCausedOtherwise) {
    return { present: [], setAside: `${text} has another recognized cause` };
  }
  return { present: [{ sign: name, day: when.day, id, text: `${text}${causeWords(sign)}` }], setAside: null };
}

/** Said of a sign that counts whatever else may cause it, where another cause is recorded all the same. */
function causeWords({ otherCause }: Sign): string {
  return otherCause ? ", which counts though another cause is recorded" : "";
}

/** Fever, hypothermia, or null for a temperature that is neither or is none of a living body. Compared exactly. */
export function temperatureSign({ temperature }: Sign): "fever" | "hypothermia" | null {
  if (temperature === null || !isHuman(temperature)) return null;
  if (comparedTo(temperature, feverAbove) > 0) return "fever";
  return comparedTo(temperature, hypothermiaBelow) < 0 ? "hypothermia" : null;
}

function judgeOther(recorded: Sign, sign: Exclude<CriterionSign, "fever" | "hypothermia">, world: World): Judged {
  const { id, when, otherCause } = recorded;
  const text = `${signNames[sign].toLowerCase()} on ${dayWords(when.day)}`;
  const present = { present: [{ sign, day: when.day, id, text: `${text}${causeWords(recorded)}` }], setAside: null };
  if (symptomsWithoutCatheter.has(sign) && !(otherCause && world.edition.otherCauseForAll)) {
    const place = catheterPlace(world, when);
    if (place === "in") return { present: [], setAside: `${text} counts only while no catheter is in place` };
    if (place === "part" && world.choice.doubtfulSigns === "absent") return nothing;
    return present;
  }
  return otherCause ? { present: [], setAside: `${text} has another recognized cause` } : present;
}

function catheterPlace(world: World, when: Sign["when"]): "in" | "out" | "part" {
  if (!world.edition.urgencyNeedsNoCatheter) return "out";
  const place = catheterAt(world, when);
  if (world.edition.options.urgencyOnRemovalDay === "after-removal") return place;
  return world.catheters.some(({ first, last }) => first <= when.day && when.day <= last) ? "in" : place;
}

/** Whether one of urgency, frequency and dysuria could count on some day of a window. */
export function couldFeelUrgency(world: World, window: Window): boolean {
  for (let day = window.usableFrom; day <= window.last; day += 1) {
    if (catheterPlace(world, { day, at: null }) !== "in") return true;
  }
  return false;
}
