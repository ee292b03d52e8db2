import type { Met } from "./attempt.ts";
import { stepOf } from "./attempt.ts";
import type { DayRange, Determination, Step, SurveillanceEvent } from "./determination.ts";
import { donorSupport } from "./donor-support.ts";
import { dayListWords, dayWords, rangeWords } from "./in-words.ts";
import { sameOrganism } from "./match-organism.ts";
import { bloodOf, isSettled } from "./matching-blood.ts";
import type { Specimen } from "./surveillance-timeline.ts";
import type { Candidate } from "./sweep-repeats.ts";
import type { World } from "./world.ts";

/** A candidate as a determination, with what follows from it: bloodstream infection, exclusion, what it depends on. */
export function eventOf(one: Candidate, undetermined: readonly Candidate[], world: World): Determination {
  const { subject, met, steps } = one;
  const base = {
    subject,
    editionId: world.edition.id,
    outcome: one.outcome,
    closes: one.closes,
    event: null,
    repeatOf: one.repeatOf?.subject ?? null,
    dependsOn: [],
    otherReading: null,
    hinges: [],
    derivation: steps,
  };
  if (one.outcome !== "event" || met === null) return base;
  const blood = bloodstreamOf(met, world);
  const event = eventFrom(one, met, blood, world);
  const donor = donorStep(one, world);
  const derivation = [...steps, ...(blood ? [blood.step] : []), ...(donor ? [donor] : [])];
  const dependsOn = undetermined.filter((other) => couldPrecede(other, met, world)).map((other) => other.subject);
  return { ...base, outcome: donor?.status === "held" ? "excluded" : "event", event, dependsOn, derivation };
}

interface Bloodstream {
  readonly period: DayRange;
  readonly secondary: readonly number[];
  readonly waiting: readonly number[];
  readonly step: Step;
}

function eventFrom(one: Candidate, met: Met, blood: Bloodstream | null, world: World): SurveillanceEvent {
  const { dateOfEvent, firstElementDay, window, episode, onset, isAssociated, wardId, criterion } = met;
  const pathogens = inOrder((met.culture?.pathogens ?? []).map(({ identity }) => identity.key));
  return {
    criterion: criterion.id,
    dateOfEvent,
    firstElementDay,
    window,
    hospitalDay: dateOfEvent - episode.firstDay + 1,
    catheterDay: world.eligibility(episode).get(dateOfEvent) ?? null,
    onset,
    deviceAssociated: isAssociated,
    isCauti: isAssociated && onset === "healthcare-associated",
    repeatTimeframe: world.edition.repeat.periodOf(dateOfEvent, window, world),
    bloodstreamPeriod: blood?.period ?? null,
    wardId,
    pathogens,
    addedPathogens: inOrder(one.added).filter((name) => !pathogens.includes(name)),
    secondaryBloodstream: blood?.secondary ?? [],
    bloodstreamWaiting: blood?.waiting ?? [],
  };
}

/** Blood of the period that matches a bacterium of the urine culture: also what is an element of ABUTI. */
function bloodstreamOf(met: Met, world: World): Bloodstream | null {
  const { bloodstream } = world.edition;
  if (bloodstream === null) return null;
  const period = bloodstream.periodOf(met.dateOfEvent, met.window, world);
  const blood = bloodOf(world).filter(({ collected: { day } }) => period.first <= day && day <= period.last);
  const urine = (met.culture?.specimen.organisms ?? []).filter(({ identity }) => identity.group === "bacterium");
  const matching = blood.filter(
    (one) =>
      isSettled(one) &&
      one.organisms.some((a) =>
        urine.some((b) => a.identity.group === "bacterium" && sameOrganism(a.identity, b.identity)),
      ),
  );
  const isUnnamed = (one: Specimen) => one.organisms.some(({ identity }) => identity.group === null);
  const waiting = blood.filter((one) => !matching.includes(one) && (!isSettled(one) || isUnnamed(one)));
  const range = rangeWords(period);
  const days = (list: typeof blood) => dayListWords(list.map(({ collected }) => collected.day));
  const [status, sentence] =
    matching.length > 0
      ? (["held", `A bloodstream infection by the blood of ${days(matching)} is secondary to it (${range}).`] as const)
      : waiting.length > 0
        ? ([
            "cannot-tell",
            `Whether a bloodstream infection is secondary to it depends on the blood of ${days(waiting)}.`,
          ] as const)
        : ([
            "noted",
            `No blood from ${range} grew a matching bacterium: no bloodstream infection is secondary to it.`,
          ] as const);
  const lookUp = status === "cannot-tell" ? bloodLookUp(waiting) : null;
  const evidence = matching.map(({ id }) => ({ kind: "specimen", id }) as const);
  const step = stepOf(bloodstream, { status, day: met.dateOfEvent, sentence, evidence, lookUp });
  return { period, secondary: matching.map(({ id }) => id), waiting: waiting.map(({ id }) => id), step };
}

function bloodLookUp(waiting: readonly Specimen[]): string {
  if (waiting.some((one) => !isSettled(one))) return "Wait for the laboratory's report on the blood.";
  return "Choose a group for what the blood grew.";
}

function donorStep({ subject, met }: Candidate, { timeline, edition }: World): Step | null {
  const from = timeline.donorSupportFrom;
  if (from === null || met === null || !edition.others.some(({ id }) => id === donorSupport.id)) return null;
  const isExcluded = (subject.kind === "specimen" ? subject.day : met.dateOfEvent) >= from;
  const sentence = isExcluded
    ? `The event is not reported: since ${dayWords(from)} the patient was supported for organ donation.`
    : `The event is reported: the specimen is older than the support for organ donation from ${dayWords(from)} on.`;
  const evidence = [{ kind: "patient", id: 0 }] as const;
  return stepOf(donorSupport, { status: isExcluded ? "held" : "noted", day: from, sentence, evidence });
}

/** Whether an undetermined subject could turn out as an event whose timeframe holds this one. */
function couldPrecede({ subject }: Candidate, { dateOfEvent }: Met, { edition }: World): boolean {
  const { windowDays, repeatDays } = edition.options;
  return subject.day - windowDays <= dateOfEvent && dateOfEvent <= subject.day + repeatDays - 1;
}

/** Each name once, by name: in which order a laboratory or a file told them says nothing. */
function inOrder(names: readonly string[]): string[] {
  return [...new Set(names)].sort();
}
