import { describe, expect, it } from "vitest";
import { insertionRecord } from "../../shared/records.ts";
import { drawFrom } from "../../src/demo/draw.ts";
import { careRounds, drawInsertionRecord } from "../../src/demo/recent-care.ts";
import { wardOf } from "../../src/demo/wards.ts";
import { defaultPolicy } from "../../src/domain/policy/default-policy.ts";
import { hospitalAt, noon, zone } from "./drawn.ts";

const { courses } = hospitalAt(noon);
const firstDay = zone.dayOf(noon) - 13;
const rounds = careRounds(drawFrom(2), courses, { zone, now: noon, firstDay });

describe("the care of the last two weeks", () => {
  it("sees every catheter that is in place for a day or longer, unless nobody looks after it", () => {
    const seen = new Set(rounds.flatMap(({ found }) => found.map(({ catheter }) => catheter)));
    const inPlace = courses.flatMap(({ legs, catheters }) =>
      (legs.at(-1)?.to ?? 0) > noon ? catheters.filter((one) => one.gone > noon && one.start < noon - 86_400_000) : [],
    );
    const missed = inPlace.filter(({ number, unseen }) => !unseen && !seen.has(number));
    expect(inPlace.length).toBeGreaterThan(10);
    expect(missed).toEqual([]);
  });

  it("has care checks and confirmations on each of the days, written down when or after they were made", () => {
    for (const kind of ["care-check", "confirmation"] as const) {
      const made = rounds.filter((round) => round.kind === kind).flatMap(({ found }) => found);
      const days = new Set(made.map(({ at }) => zone.dayOf(at) - firstDay));
      expect(days.size).toBeGreaterThanOrEqual(13);
    }
    for (const { found, writtenAt } of rounds) {
      expect(writtenAt).toBeLessThanOrEqual(noon);
      for (const { at } of found) expect(at).toBeLessThanOrEqual(writtenAt);
    }
  });

  it("looks at items of the bundle: most are kept, some not, and some nobody looked at", () => {
    const checks = rounds.flatMap(({ found }) => found.flatMap(({ items }) => (items === null ? [] : [items])));
    const codes = defaultPolicy.bundle.map(({ code }) => code);
    const states = checks.flatMap((items) => Object.values(items));
    expect(checks.flatMap((items) => Object.keys(items)).filter((code) => !codes.includes(code))).toEqual([]);
    expect(states.filter((state) => state !== "broken").length / states.length).toBeGreaterThan(0.9);
    expect(states).toContain("broken");
    expect(states.length).toBeLessThan(checks.length * codes.length);
  });

  it("records insertions with nearly every field, where the ward's setting says", () => {
    const draw = drawFrom(5);
    for (const [code, place] of Object.entries({ ED: "emergency", OR: "theater", "3E": "ward" })) {
      const record = drawInsertionRecord(draw, wardOf(code));
      expect(insertionRecord.parse(record).insertedIn).toBe(place);
      expect(Object.keys(record).length).toBeGreaterThan(12);
    }
  });
});
