import type { Onset } from "../../../shared/culture-words.ts";
import type { DayNumber } from "../days/day-number.ts";
import { afterDischarge } from "./after-discharge.ts";
import type { Step, Subject } from "./determination.ts";
import { daysWords, dayWords, rangeWords } from "./in-words.ts";
import type { Rule } from "./rule.ts";
import type { CriterionRule, Said, UsableCulture, Verdict, Window } from "./rule-kinds.ts";
import { signsInWindow } from "./signs-in-window.ts";
import { tellMet } from "./tell-met.ts";
import { temperatureNote } from "./temperature-days.ts";
import type { Episode, World } from "./world.ts";

/** A criterion that is met, with all that follows from it in one world. */
export interface Met {
  readonly criterion: CriterionRule;
  readonly verdict: Verdict;
  readonly culture: UsableCulture | null;
  readonly episode: Episode;
  readonly window: Window;
  readonly firstElementDay: DayNumber;
  readonly dateOfEvent: DayNumber;
  readonly onset: Onset;
  readonly isAssociated: boolean;
  readonly wardId: number | null;
}

/** What one anchor comes to in one world, before it is held against other anchors. */
export interface Attempt {
  readonly outcome: "event" | "not-met" | "not-usable" | "cannot-tell" | "after-discharge" | "set-aside";
  readonly met: Met | null;
  readonly steps: readonly Step[];
}

/** What is asked: an anchor, its culture if it is usable, and the first day of evidence where earlier is another's. */
export interface Question {
  readonly anchor: Subject;
  readonly culture: UsableCulture | null;
  readonly evidenceFrom: DayNumber | null;
}

/** Specimens belong to an admission from 2 days before its first inpatient day to 4 days after its last. */
const daysBefore = 2;
const daysAfter = 4;

/** Judges an anchor in the admission that it belongs to; between two, the earlier takes it when the date is its own. */
export function attempt(world: World, question: Question): Attempt {
  const { day } = question.anchor;
  let last: Attempt | null = null;
  for (const episode of episodesAround(world, day)) {
    last = attemptIn(world, episode, question);
    if (last.outcome === "event" || last.outcome === "cannot-tell") return last;
  }
  return last ?? outside(world, day);
}

function episodesAround({ episodes }: World, day: DayNumber): Episode[] {
  return episodes.filter(
    ({ firstDay, lastDay, isOver }) => day >= firstDay - daysBefore && (!isOver || day <= lastDay + daysAfter),
  );
}

/** Whether a day belongs to no admission. */
export function isOutside(world: World, day: DayNumber): boolean {
  return episodesAround(world, day).length === 0;
}

/** The step of a rule. */
export function stepOf(rule: Pick<Rule, "id">, said: Said): Step {
  const { status, day, sentence, evidence, nearest = null, lookUp = null } = said;
  return { rule: rule.id, status, day, sentence, evidence, nearest, lookUp };
}

function outside({ edition }: World, day: DayNumber): Attempt {
  const sentence = `On ${dayWords(day)} the patient was on no inpatient ward, nor from ${daysWords(daysBefore)} before to ${daysWords(daysAfter)} after.`;
  const lookUp = "Check the stays of the patient, the wards' settings and the time of collection.";
  const step = stepOf(edition.window, { status: "failed", day, sentence, evidence: [], lookUp });
  return { outcome: "set-aside", met: null, steps: [step] };
}

function attemptIn(world: World, episode: Episode, { anchor, culture, evidenceFrom }: Question): Attempt {
  const { edition } = world;
  const nominal = edition.window.windowOf(anchor.day, episode, world);
  const window = { ...nominal, usableFrom: Math.max(nominal.usableFrom, evidenceFrom ?? nominal.usableFrom) };
  const facts = { world, episode, anchor, window, culture, signs: signsInWindow(world, episode, window) };
  const steps: Step[] = [
    stepOf(edition.window, { status: "held", day: anchor.day, sentence: windowSentence(window), evidence: [] }),
  ];
  const isJudged = culture !== null || anchor.kind === "finding";
  const note = isJudged ? temperatureNote(facts) : null;
  if (note) steps.push({ ...stepOf(edition.window, note), temperature: note.temperature });
  let isOpen = false;
  for (const criterion of edition.criteria) {
    const verdict = criterion.judge(facts);
    steps.push(stepOf(criterion, verdict));
    if (verdict.status === "held") return concluded({ criterion, verdict, culture, episode, window }, steps, world);
    if (verdict.status === "cannot-tell") isOpen = true;
  }
  return { outcome: isOpen ? "cannot-tell" : "not-met", met: null, steps };
}

function windowSentence(window: Window): string {
  const rest = window.usableFrom > window.first ? `; elements count from ${dayWords(window.usableFrom)} on` : "";
  return `The window runs from ${rangeWords(window)}${rest}.`;
}

type Found = Pick<Met, "criterion" | "verdict" | "culture" | "episode" | "window">;

function concluded(found: Found, steps: readonly Step[], world: World): Attempt {
  const { edition } = world;
  const { episode, verdict } = found;
  const firstElementDay = verdict.firstElementDay ?? found.window.usableFrom;
  const dateOfEvent = edition.date.dateOf(firstElementDay, episode);
  const onset = edition.onset.onsetOf(dateOfEvent, episode, world);
  const isAssociated = edition.device.isAssociated(dateOfEvent, episode, world);
  const wardId = onset === "healthcare-associated" ? edition.attribution.wardOf(dateOfEvent, episode, world) : null;
  const met: Met = { ...found, firstElementDay, dateOfEvent, onset, isAssociated, wardId };
  const daysLate = episode.isOver ? firstElementDay - episode.lastDay : 0;
  const told = [...steps, ...tellMet(met, world)];
  if (daysLate <= 0) return { outcome: "event", met, steps: told };
  const late = stepOf(afterDischarge, {
    status: daysLate === 1 ? "held" : "noted",
    day: dateOfEvent,
    sentence: `The date of event lies ${daysWords(daysLate)} after the last day on an inpatient ward, ${dayWords(episode.lastDay)}: ${daysLate === 1 ? "it belongs to the ward that discharged" : "it is not reported"}.`,
    evidence: episode.stayIds.map((id) => ({ kind: "stay", id })),
  });
  return { outcome: daysLate === 1 ? "event" : "after-discharge", met, steps: [...told, late] };
}
