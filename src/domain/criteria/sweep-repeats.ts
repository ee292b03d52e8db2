import type { DeterminationOutcome } from "../../../shared/culture-words.ts";
import type { Met } from "./attempt.ts";
import type { DayRange, Step, Subject } from "./determination.ts";
import { dayWords, rangeWords } from "./in-words.ts";
import { type Asked, attemptInAll } from "./merge-worlds.ts";
import { bySubject } from "./subject-order.ts";
import type { World } from "./world.ts";

/** A subject on its way to a determination. */
export interface Candidate {
  readonly subject: Subject;
  /** Certain in every way: it closes without a person. */
  readonly closes: boolean;
  /** What was asked of it. */
  readonly asked: Asked;
  outcome: DeterminationOutcome;
  met: Met | null;
  steps: Step[];
  repeatOf: Candidate | null;
  /** Canonical names of organisms that repeats of it add. */
  added: string[];
}

type Event = Candidate & { met: Met };

/**
 * Goes through the events in the order of their dates: one whose date lies in the timeframe of an earlier event of the
 * same admission is a repeat of it and adds its organisms.
 */
export function sweepRepeats(candidates: readonly Candidate[], worlds: readonly World[]): void {
  const [world] = worlds;
  if (!world) return;
  const queue = candidates.filter((one): one is Event => one.outcome === "event" && one.met !== null);
  const events: Event[] = [];
  for (;;) {
    queue.sort((a, b) => a.met.dateOfEvent - b.met.dateOfEvent || bySubject(a.subject, b.subject));
    const next = queue.shift();
    if (!next) return;
    const earlier = events.find((event) => holds(event, next, world));
    if (!earlier) {
      events.push(next);
      next.steps.push(repeatStep(next, null, world));
    } else if (!triedLater(next, earlier, worlds)) {
      next.outcome = "repeat";
      next.repeatOf = earlier;
      earlier.added.push(...(next.met.culture?.pathogens ?? []).map(({ identity }) => identity.key));
      next.steps.push(repeatStep(next, earlier, world));
    } else queue.push(next);
  }
}

/** The repeat infection timeframe of an event. */
function timeframeOf({ met }: Event, world: World): DayRange {
  return world.edition.repeat.periodOf(met.dateOfEvent, met.window, world);
}

function holds(event: Event, next: Event, world: World): boolean {
  const { first, last } = timeframeOf(event, world);
  // An admission is known by its first inpatient day: that is all an answer tells of it, whatever a ward turns out to be.
  const isSameStay = event.met.episode.firstDay === next.met.episode.firstDay;
  const { dateOfEvent } = next.met;
  return (isSameStay || world.edition.options.timeframeAcrossStays) && first <= dateOfEvent && dateOfEvent <= last;
}

/** Whether the edition dates a culture from behind the timeframe by elements from behind it, and these suffice. */
function triedLater(next: Event, earlier: Event, worlds: readonly World[]): boolean {
  const [world] = worlds;
  if (world?.edition.options.elementInsideTimeframe !== "later-elements") return false;
  const evidenceFrom = timeframeOf(earlier, world).last + 1;
  if (next.subject.day < evidenceFrom || next.met.window.usableFrom >= evidenceFrom) return false;
  const later = attemptInAll(worlds, { ...next.asked, evidenceFrom });
  if (later.outcome !== "event" || later.met === null) return false;
  next.met = later.met;
  next.steps.push(...later.steps);
  return true;
}

function repeatStep({ met }: Event, earlier: Event | null, world: World): Step {
  const { id } = world.edition.repeat;
  const step = { rule: id, day: met.dateOfEvent, evidence: [], nearest: null, lookUp: null };
  if (!earlier) {
    const sentence = `It is a new event. Its timeframe runs from ${rangeWords(world.edition.repeat.periodOf(met.dateOfEvent, met.window, world))}.`;
    return { ...step, status: "held", sentence };
  }
  const range = rangeWords(timeframeOf(earlier, world));
  const sentence = `It is no new event: ${dayWords(met.dateOfEvent)} lies in the timeframe of the event of ${dayWords(earlier.met.dateOfEvent)}, ${range}. Its organisms are added to that event.`;
  const { subject } = earlier;
  return { ...step, status: "noted", sentence, evidence: [{ kind: subject.kind, id: subject.id }] };
}
