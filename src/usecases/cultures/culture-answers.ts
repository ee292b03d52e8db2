import type { z } from "zod";
import type { findingState, signState, specimenState } from "../../../shared/api/culture-entries.ts";
import { matchOrganism, temperatureText } from "../../domain/criteria/index.ts";
import type { RecordedFinding } from "../../domain/cultures/finding.ts";
import { type LaboratoryWords, noWords } from "../../domain/cultures/laboratory-words.ts";
import type { RecordedSign } from "../../domain/cultures/sign.ts";
import {
  countOf,
  identityOf,
  type RecordedOrganism,
  type RecordedSpecimen,
  setAsideIn,
  type WordsThen,
} from "../../domain/cultures/specimen.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { noHourOf } from "../record/entry-state.ts";

/** A specimen as it is answered. */
export function specimenAnswer(
  specimen: RecordedSpecimen,
  words: LaboratoryWords = noWords,
): z.output<typeof specimenState> {
  const { id, marks, organisms, ...said } = specimen;
  const then = { words, writtenAt: specimen.writtenAt };
  const grown = organisms.map((one) => organismAnswer(one, then));
  return { ...said, ...noHourOf({ marks }), specimenId: id, organisms: grown, setAside: setAsideIn(specimen, words) };
}

function organismAnswer({ id, name, group, count }: RecordedOrganism, then: WordsThen) {
  const identity = identityOf({ name, group }, then);
  return {
    ...{ organismId: id, name, group: identity.group, isOnList: matchOrganism(name) !== null },
    ...{ isCommensal: identity.isCommensal ?? false, count, countKind: countOf({ count }, then).kind },
  };
}

/** A sign as it is answered. */
export function signAnswer({ id, marks: _marks, day, ...sign }: RecordedSign): z.output<typeof signState> {
  const { lastDay, temperature, ...said } = sign;
  return {
    ...said,
    signId: id,
    day: dayText(day),
    lastDay: lastDay === null ? null : dayText(lastDay),
    temperature: temperature === null ? null : temperatureText(temperature),
  };
}

/** A finding as it is answered. */
export function findingAnswer({ id, marks: _marks, day, ...said }: RecordedFinding): z.output<typeof findingState> {
  return { ...said, findingId: id, day: dayText(day) };
}
