import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { OffsetPeriods } from "../../../src/domain/days/offset-periods.ts";
import { clockChanges } from "./clock-changes.ts";
import { everyZone, instantsIn, zoned } from "./every-zone.ts";

describe("the periods of one offset", () => {
  it.each(clockChanges)("of $zone meet at $at ($kind)", ({ zone, at, before, after }) => {
    const periods = new OffsetPeriods(zone);
    const instant = Date.parse(at);
    const left = periods.at(instant - 1);
    const right = periods.at(instant);
    expect(left.end).toBe(instant);
    expect(right.start).toBe(instant);
    expect(left.offsetMs).toBe(Date.parse(`${before}Z`) - (instant - 1000));
    expect(right.offsetMs).toBe(Date.parse(`${after}Z`) - instant);
  });

  it("join without a hole and change where Temporal says, over 200 years of a few zones", () => {
    for (const zone of ["America/New_York", "Africa/Casablanca", "America/Recife", "Pacific/Apia", "Europe/Dublin"]) {
      const periods = new OffsetPeriods(zone);
      const start = Date.UTC(1900, 0, 1);
      const found: number[] = [];
      for (let p = periods.at(start); p.end < Date.UTC(2100, 0, 1); ) {
        const next = periods.at(p.end);
        expect(next.start).toBe(p.end);
        if (next.offsetMs !== p.offsetMs) found.push(next.start);
        p = next;
      }
      const known: number[] = [];
      let change = zoned(start, zone).getTimeZoneTransition("next");
      while (change !== null && change.epochMilliseconds < Date.UTC(2100, 0, 1)) {
        known.push(change.epochMilliseconds);
        change = change.getTimeZoneTransition("next");
      }
      expect({ zone, changes: found }).toEqual({ zone, changes: known });
    }
  });

  it("have the offset of Temporal in every zone, from 1900 to 2100 (a failure prints its seed)", () => {
    for (const zone of everyZone) {
      const periods = new OffsetPeriods(zone);
      fc.assert(
        fc.property(fc.constant(zone), instantsIn(zone), (_, instant) => {
          const period = periods.at(instant);
          expect(period.start <= instant && instant < period.end).toBe(true);
          expect(period.offsetMs).toBe(zoned(instant, zone).offsetNanoseconds / 1e6);
        }),
        { numRuns: 8 },
      );
    }
  });

  it("are asked of the runtime alone, so an unknown zone and an impossible instant are range errors", () => {
    expect(() => new OffsetPeriods("Alder/Bay")).toThrow(RangeError);
    expect(() => new OffsetPeriods("UTC").at(Number.NaN)).toThrow(RangeError);
    expect(() => new OffsetPeriods("UTC").at(Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });
});
