import fc from "fast-check";
import { Temporal } from "temporal-polyfill";

/** Every zone of the runtime, or those that ZONES names: for whoever runs these tests thousands of times. */
export const everyZone: readonly string[] = process.env.ZONES?.split(",") ?? manyZones();

function manyZones(): string[] {
  const zones = Intl.supportedValuesOf("timeZone");
  if (zones.length <= 400) throw new Error(`the runtime knows ${zones.length} zones alone`);
  return zones;
}

const day = 86_400_000;

/** Whole seconds from 1900 to 2098, so that the next change of the clocks still lies before the end of 2100. */
const secondsSince1900 = fc
  .integer({ min: Date.UTC(1900, 0, 1) / 1000, max: Date.UTC(2098, 11, 31) / 1000 })
  .map((seconds) => seconds * 1000);

/**
 * Instants of a zone in 1900 to 2100, three of four within two days of a change of its clocks; every other of those
 * is at most a second away from the change. The changes come from Temporal, not from the code under test.
 */
export function instantsIn(zone: string, from = Date.UTC(1900, 0, 1)): fc.Arbitrary<number> {
  const near = fc.oneof(
    fc.constantFrom(-1000, -1, 0, 1, 1000),
    fc.integer({ min: -2 * day, max: 2 * day }),
    fc.integer({ min: -120, max: 120 }).map((quarters) => quarters * 900_000),
  );
  return fc
    .tuple(secondsSince1900, fc.oneof({ weight: 3, arbitrary: near }, { weight: 1, arbitrary: fc.constant(null) }))
    .map(([somewhere, distance]) => {
      const start = Math.max(somewhere, from);
      if (distance === null) return start;
      const next = zoned(start, zone).getTimeZoneTransition("next");
      return (next?.epochMilliseconds ?? start) + distance;
    });
}

/** An instant in a zone, as Temporal has it. */
export function zoned(instant: number, zone: string): Temporal.ZonedDateTime {
  return Temporal.Instant.fromEpochMilliseconds(instant).toZonedDateTimeISO(zone);
}

/** A day number as a date of Temporal. */
export function plainDate(n: number): Temporal.PlainDate {
  return Temporal.PlainDate.from("1970-01-01").add({ days: n });
}
