import { describe, expect, it } from "vitest";
import { timeOrderedIds } from "../../src/store/time-ordered-ids.ts";

/** The form of RFC 9562, section 5.7: 48 bits of time, version 7, variant 10. */
const form = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

describe("ids in the order of time", () => {
  it("have the form of version 7, with the time in their first 48 bits", () => {
    // The example of RFC 9562, appendix A.6: 2022-02-22 14:22:22 -05:00 is 017F22E2-79B0.
    const id = timeOrderedIds()(Date.UTC(2022, 1, 22, 19, 22, 22));
    expect(id).toMatch(form);
    expect(id.slice(0, 13)).toBe("017f22e2-79b0");
  });

  it("never repeat and never go back, within a millisecond, beyond its counter, or with the clock", () => {
    const draw = timeOrderedIds();
    const times = [...Array.from({ length: 10_000 }, () => 1000), 999, 500, 1001, 5000, 5000];
    const ids = times.map((time) => draw(time));
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.toSorted()).toEqual(ids);
    for (const id of ids) expect(id).toMatch(form);
  });
});
