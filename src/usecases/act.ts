import { type Fault, Problem } from "../../shared/problems.ts";
import type { Role } from "../../shared/vocabulary.ts";
import type { Instant } from "../domain/days/day-number.ts";
import type { Recording } from "../store/patients.ts";
import type { Store } from "../store/store.ts";

/** What a use case keeps its record in; the doors only pass it on. */
export type { Store } from "../store/store.ts";

/** The person who acts, in the facility in which they act. */
export interface Actor {
  readonly personId: number;
  readonly facilityId: number;
  readonly roles: readonly Role[];
  /** Wards that the person belongs to; bedside and manager see no others. */
  readonly wardIds: readonly number[];
}

/** What every use case receives: where it is kept, who acts, and the time. */
export interface Act {
  readonly store: Store;
  readonly actor: Actor;
  readonly now: Instant;
}

/** Who records, where and when. */
export function recording({ actor, now }: Act): Recording {
  return { facilityId: actor.facilityId, personId: actor.personId, now };
}

/** Clocks of devices may run ahead by this much. Common practice. */
export const clockToleranceMs = 5 * 60_000;

/** Refuses `in-the-future` for an instant that has not come yet; null and undefined pass. */
export function notInFuture(now: Instant, instants: Readonly<Record<string, Instant | null | undefined>>): void {
  const [first, ...more] = futureFaults(now, instants);
  if (first) throw new Problem(first, ...more);
}

/** A fault for each instant that has not come yet, with the server's clock: the one of the device may be wrong. */
export function futureFaults(now: Instant, instants: Readonly<Record<string, Instant | null | undefined>>): Fault[] {
  const detail = `This time has not come yet. The clock of the server says ${new Date(now).toISOString()}.`;
  return Object.entries(instants).flatMap(([field, instant]) =>
    instant != null && instant > now + clockToleranceMs
      ? [{ code: "in-the-future", pointer: `/${field}`, detail }]
      : [],
  );
}
