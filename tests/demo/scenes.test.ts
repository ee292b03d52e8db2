import { describe, expect, it } from "vitest";
import { legAt } from "../../src/demo/course.ts";
import { scenes } from "../../src/demo/scenes.ts";
import { hospitalAt, midnight, noon, scene, zone } from "./drawn.ts";

const hospital = hospitalAt(noon);
const hourMs = 3_600_000;
const today = zone.dayOf(noon);

describe("the demo has for certain", () => {
  it("a review that was written down on the day after it happened", () => {
    const [catheter] = scene(hospital, "late-entry").catheters;
    const late = catheter?.reviews.filter(({ at, written }) => zone.dayOf(written) > zone.dayOf(at));
    expect(late).toHaveLength(1);
    expect((late?.[0]?.written ?? 0) - (late?.[0]?.at ?? 0)).toBeGreaterThan(8 * hourMs);
  });

  it("a forgotten removal: nobody has seen the catheter for more than 48 hours", () => {
    const [catheter] = scene(hospital, "doubtful").catheters;
    const last = Math.max(catheter?.inserted ?? 0, ...(catheter?.reviews ?? []).map(({ at }) => at));
    expect(catheter).toMatchObject({ removed: null, unseen: true });
    expect(noon - last).toBeGreaterThan(48 * hourMs);
  });

  it("a catheter put in again 12 hours after another was taken out", () => {
    const [first, second] = scene(hospital, "reinsertion").catheters;
    expect((second?.inserted ?? 0) - (first?.removed ?? 0)).toBe(12 * hourMs);
  });

  it("an exchange within the hour, with its reason", () => {
    const [first, second] = scene(hospital, "exchange").catheters;
    expect(first?.reason).toBe("exchange");
    expect((second?.inserted ?? 0) - (first?.removed ?? 0)).toBeLessThanOrEqual(hourMs);
  });

  it("a move at exactly the census", () => {
    const { course, catheters } = scene(hospital, "transfer-at-census");
    const [before, after] = course.legs;
    expect(before?.to).toBe(midnight(today - 8));
    expect(after?.from).toBe(before?.to);
    expect(before?.ward.code).not.toBe(after?.ward.code);
    expect(catheters[0]?.start).toBeLessThan(before?.to ?? 0);
    expect(catheters[0]?.removed).toBeGreaterThan(before?.to ?? 0);
  });

  it("an absence over a census that nobody explained", () => {
    const { legs } = scene(hospital, "unknown-absence").course;
    expect(legs[0]?.absence).toBe(null);
    const census = midnight(today - 11);
    expect(legs.filter(({ from, to }) => from <= census && census < to)).toEqual([]);
    expect([legs[0]?.to ?? 0, legs[1]?.from ?? 0].map((at) => at < census)).toEqual([true, false]);
  });

  // New York changed its clocks on 2026-03-08 and 2026-11-01 (US Energy Policy Act of 2005, section 110; from memory).
  it("stays with a catheter across each change of the clocks", () => {
    for (const [i, change] of [Date.UTC(2026, 2, 8, 7), Date.UTC(2026, 10, 1, 6)].entries()) {
      const { course, catheters } = scene(hospital, `clock-change-${i + 1}`);
      expect(legAt(course.legs, change)).toBeDefined();
      expect(catheters[0]?.start).toBeLessThan(change);
      expect(catheters[0]?.removed).toBeGreaterThan(change);
    }
  });

  it("a catheter found in place on arrival, and a suprapubic one", () => {
    expect(scene(hospital, "on-arrival").catheters[0]).toMatchObject({ inserted: null, start: expect.any(Number) });
    expect(scene(hospital, "suprapubic").catheters[0]?.kind).toBe("suprapubic");
  });

  it("all of this whenever it is loaded, and nothing of it in a time to come", () => {
    for (let hour = 0; hour < 24; hour++) {
      const now = midnight(today) + hour * hourMs + 7 * 60_000;
      for (const { legs, catheters } of scenes({ zone, now, days: 365 })) {
        expect(legs.every(({ from }) => from <= now)).toBe(true);
        for (const { start, removed, reviews } of catheters)
          expect(Math.max(start, removed ?? 0, ...reviews.flatMap(({ at, written }) => [at, written]))).toBeLessThan(
            now,
          );
      }
    }
  });
});
