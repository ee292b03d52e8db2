import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { catheterDayRate, populationRate } from "../../../src/domain/counting/rates.ts";
import { utilization } from "../../../src/domain/counting/utilization.ts";

describe("rates for a given number of events", () => {
  it("are 0 without events", () => {
    expect(catheterDayRate({ events: 0, catheterDays: 1475 })).toEqual({ value: 0 });
    expect(populationRate({ events: 0, patientDays: 1475 })).toEqual({ value: 0 });
  });

  it("are null with the reason when the denominator is 0, with or without events", () => {
    expect(catheterDayRate({ events: 1, catheterDays: 0 })).toEqual({
      value: null,
      reason: "There are no catheter-days, so there is no rate.",
    });
    expect(populationRate({ events: 0, patientDays: 0 })).toEqual({
      value: null,
      reason: "There are no patient-days, so there is no rate.",
    });
  });

  it("stop at events and days that cannot be", () => {
    expect(() => catheterDayRate({ events: 1.5, catheterDays: 10 })).toThrow("events must be a whole number");
    expect(() => populationRate({ events: -1, patientDays: 10 })).toThrow("events must be a whole number");
    expect(() => catheterDayRate({ events: 1, catheterDays: -10 })).toThrow("catheterDays must be");
    expect(() => populationRate({ events: 1, patientDays: Number.NaN })).toThrow("patientDays must be");
  });

  // Source: Wright et al., Infect Control Hosp Epidemiol 2011;32:635-640. A failure prints its seed.
  it("keep the identity: per 10,000 patient-days = per 1,000 catheter-days x utilization x 10", () => {
    const days = fc.integer({ min: 1, max: 1e6 });
    fc.assert(
      fc.property(fc.nat({ max: 500 }), days, days, (events, a, b) => {
        const [catheterDays, patientDays] = [Math.min(a, b), Math.max(a, b)];
        const perCatheterDay = Number(catheterDayRate({ events, catheterDays }).value);
        const perPatientDay = Number(populationRate({ events, patientDays }).value);
        const ratio = Number(utilization({ patientDays, catheterDays }).value);
        expect(Math.abs(perPatientDay - perCatheterDay * ratio * 10)).toBeLessThanOrEqual(1e-12 * perPatientDay);
      }),
    );
  });
});
