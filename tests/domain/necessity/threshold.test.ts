import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { thresholdOn } from "../../../src/domain/necessity/threshold.ts";
import { defaultPolicy } from "../../../src/domain/policy/default-policy.ts";

const five = { thresholdDays: 5, thresholdByIndication: { perioperative: 2, "end-of-life": 30 } };
const onlySome = { ...five, thresholdDays: null };

describe("the threshold on a day", () => {
  it.each([
    { policy: five, day: 5, indication: null, own: false, past: 0, of: 5 },
    { policy: five, day: 6, indication: null, own: false, past: 1, of: 5 },
    { policy: five, day: 12, indication: "immobilization", own: false, past: 7, of: 5 },
    { policy: five, day: 2, indication: "perioperative", own: true, past: 0, of: 2 },
    { policy: five, day: 3, indication: "perioperative", own: true, past: 1, of: 2 },
    { policy: five, day: 30, indication: "end-of-life", own: true, past: 0, of: 30 },
    { policy: onlySome, day: 99, indication: "immobilization", own: false, past: 0, of: null },
    { policy: onlySome, day: 99, indication: null, own: false, past: 0, of: null },
    { policy: onlySome, day: 31, indication: "end-of-life", own: true, past: 1, of: 30 },
    { policy: five, day: null, indication: "perioperative", own: true, past: 0, of: 2 },
    { policy: five, day: 6, indication: "constructor", own: false, past: 1, of: 5 },
    { policy: defaultPolicy, day: 400, indication: "immobilization", own: false, past: 0, of: null },
    { policy: defaultPolicy, day: 3, indication: "perioperative", own: true, past: 1, of: 2 },
  ])("day $day with $indication is $past past $of", ({ policy, day, indication, own, past, of }) => {
    expect(thresholdOn(day, indication, policy)).toEqual({ daysPast: past, thresholdDays: of, ofIndication: own });
  });

  it("is past on every day after it and on none before", () => {
    const days = fc.integer({ min: 1, max: 400 });
    fc.assert(
      fc.property(days, days, (day, thresholdDays) => {
        const { daysPast } = thresholdOn(day, null, { thresholdDays, thresholdByIndication: {} });
        expect(daysPast > 0).toBe(day > thresholdDays);
        if (daysPast > 0) expect(thresholdDays + daysPast).toBe(day);
      }),
    );
  });
});
