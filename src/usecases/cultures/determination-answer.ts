import type { readDeterminations } from "../../../shared/api/determinations.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import {
  type DayRange,
  type Determination,
  rulesOf,
  type Step,
  type Subject,
  type SurveillanceEvent,
  sourceText,
} from "../../domain/criteria/index.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { editionNamed } from "../../domain/editions/index.ts";

type Answer = OutputOf<typeof readDeterminations>["determinations"][0];

/** A determination as it is answered: days as text, and the sources of its rule beside each sentence. */
export function determinationAnswer(determination: Determination): Answer {
  const { subject, editionId, outcome, event, repeatOf, dependsOn, otherReading, closes, hinges, derivation } =
    determination;
  return {
    ...{ editionId, outcome, closes, otherReading },
    hinges: hinges.map(({ evidence, ...hinge }) => ({ ...hinge, evidence: [...evidence] })),
    subject: subjectAnswer(subject),
    event: event && eventAnswer(event),
    repeatOf: repeatOf && subjectAnswer(repeatOf),
    dependsOn: dependsOn.map(subjectAnswer),
    derivation: derivation.map((step) => stepAnswer(step, editionId)),
  };
}

function subjectAnswer({ kind, id, day }: Subject): Answer["subject"] {
  return { kind, id, day: dayText(day) };
}

function eventAnswer(event: SurveillanceEvent): NonNullable<Answer["event"]> {
  const { window, dateOfEvent, firstElementDay, repeatTimeframe, bloodstreamPeriod, ...said } = event;
  return {
    ...said,
    pathogens: [...said.pathogens],
    addedPathogens: [...said.addedPathogens],
    secondaryBloodstream: [...said.secondaryBloodstream],
    bloodstreamWaiting: [...said.bloodstreamWaiting],
    dateOfEvent: dayText(dateOfEvent),
    firstElementDay: dayText(firstElementDay),
    window: { ...rangeAnswer(window), usableFrom: dayText(window.usableFrom) },
    repeatTimeframe: rangeAnswer(repeatTimeframe),
    bloodstreamPeriod: bloodstreamPeriod && rangeAnswer(bloodstreamPeriod),
  };
}

function rangeAnswer({ first, last }: DayRange) {
  return { first: dayText(first), last: dayText(last) };
}

function stepAnswer(
  { day, evidence, temperature: _temperature, ...step }: Step,
  editionId: string,
): Answer["derivation"][0] {
  const edition = editionNamed(editionId);
  const rule = edition && rulesOf(edition).find(({ id }) => id === step.rule);
  if (!rule) throw new Error(`${editionId} has no rule ${step.rule}`);
  return {
    ...step,
    day: day === null ? null : dayText(day),
    evidence: [...evidence],
    sources: rule.sources.map(sourceText),
  };
}
