import { describe, expect, it } from "vitest";
import { catheterFrom } from "../../src/demo/course.ts";
import { drawFrom } from "../../src/demo/draw.ts";
import { drawReviews } from "../../src/demo/draw-reviews.ts";
import { dueOn } from "../../src/demo/policies.ts";
import { wardOf } from "../../src/demo/wards.ts";
import { hospitalAt, midnight, noon, zone } from "./drawn.ts";

const hourMs = 3_600_000;
const today = zone.dayOf(noon);
const draw = drawFrom(4);

/** The reviews of a catheter that was in place on a ward for 300 days, and the days on which one was due. */
function longCourse(ward: string, more: Partial<Parameters<typeof catheterFrom>[1]> = {}) {
  const start = midnight(today - 300) + 8 * hourMs;
  const legs = [{ ward: wardOf(ward), bed: "1", from: start, to: Number.POSITIVE_INFINITY, absence: null }];
  const catheter = catheterFrom(start, { number: "C1", ...more });
  return drawReviews(draw, catheter, { legs, zone, now: noon, policies: [] });
}

/** The share of 299 days with an answer by noon. */
function inTime(ward: string): number {
  const days = new Set(
    longCourse(ward)
      .filter(({ at, outcome }) => outcome !== "ask" && at <= dueOn([], { ward, day: zone.dayOf(at), zone }))
      .map(({ at }) => zone.dayOf(at)),
  );
  return days.size / 299;
}

describe("drawn reviews", () => {
  it("are made in time on about 80 % of the days, and on half of them on 4N", () => {
    expect(Math.abs(inTime("3E") - 0.79)).toBeLessThan(0.08);
    expect(Math.abs(inTime("4N") - 0.5)).toBeLessThan(0.08);
  });

  it("are sometimes questions, mostly answered the same day, and sometimes written down hours later", () => {
    const reviews = longCourse("3E");
    const asked = reviews.filter(({ outcome }) => outcome === "ask");
    const answered = asked.filter(({ at }) =>
      reviews.some((one) => one.outcome !== "ask" && one.at > at && one.at < at + 4 * hourMs),
    );
    expect(asked.length).toBeGreaterThan(3);
    expect(answered.length).toBeGreaterThan(asked.length / 2);
    expect(reviews.some(({ at, written }) => written - at > 4 * hourMs)).toBe(true);
  });

  it("give a reason when they keep the catheter, and never otherwise", () => {
    for (const { outcome, indication } of longCourse("4N", { indication: null }))
      expect(indication === null).toBe(outcome !== "keep");
  });

  it("lie inside the catheter's time and before now, and are written down after they were made", () => {
    for (const { catheters } of hospitalAt(noon).courses)
      for (const { start, gone, removed, reviews } of catheters)
        for (const { at, written } of reviews) {
          expect(at > start && at < Math.min(gone, removed ?? gone) && at <= noon).toBe(true);
          expect(written >= at && written <= noon).toBe(true);
        }
  });

  it("decide on many removals the day before or on the day, some after the prescriber was asked", () => {
    const removed = hospitalAt(noon).courses.flatMap(({ catheters }) =>
      catheters.filter((one) => one.removed !== null),
    );
    const decided = removed.filter(({ reviews }) => reviews.some(({ outcome }) => outcome === "remove"));
    expect(decided.length / removed.length).toBeGreaterThan(0.15);
    expect(decided.some(({ reviews }) => reviews.at(-2)?.outcome === "ask")).toBe(true);
  });

  it("are none for other kinds", () => {
    expect(longCourse("3E", { kind: "suprapubic" })).toEqual([]);
  });
});
