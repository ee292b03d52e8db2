import type { z } from "zod";
import type { findingState, signState, specimenState } from "../../shared/api/culture-entries.ts";
import { matchOrganism, readCount, temperatureText } from "../domain/criteria/index.ts";
import type { RecordedFinding } from "../domain/cultures/finding.ts";
import type { RecordedSign } from "../domain/cultures/sign.ts";
import { identityOf, type RecordedOrganism, type RecordedSpecimen, setAsideIn } from "../domain/cultures/specimen.ts";
import { dayText } from "../domain/days/day-number.ts";

/** A specimen as it is answered. */
export function specimenAnswer(specimen: RecordedSpecimen): z.output<typeof specimenState> {
  const { id, marks: _marks, organisms, ...said } = specimen;
  return { ...said, specimenId: id, organisms: organisms.map(organismAnswer), setAside: setAsideIn(specimen) };
}

function organismAnswer({ id, name, group, count }: RecordedOrganism) {
  const identity = identityOf({ name, group });
  return {
    ...{ organismId: id, name, group: identity.group, isOnList: matchOrganism(name) !== null },
    ...{ isCommensal: identity.isCommensal ?? false, count, countKind: readCount(count).kind },
  };
}

/** A sign as it is answered. */
export function signAnswer({ id, marks: _marks, day, temperature, ...said }: RecordedSign): z.output<typeof signState> {
  return {
    ...said,
    signId: id,
    day: dayText(day),
    temperature: temperature === null ? null : temperatureText(temperature),
  };
}

/** A finding as it is answered. */
export function findingAnswer({ id, marks: _marks, day, ...said }: RecordedFinding): z.output<typeof findingState> {
  return { ...said, findingId: id, day: dayText(day) };
}
