import { expect, it } from "vitest";
import { month } from "../../../shared/day.ts";
import { compareTwoWards, type Side } from "../../../src/domain/comparison/compare-two-wards.ts";

const november = [month.parse("2026-11")];
const side = (more: Partial<Side>): Side => ({
  ...{ code: "ICU", months: november, patientDays: 1_000, catheterDays: 500, watchedDays: 500, infections: 4, open: 0 },
  ...{ predicted: { value: 3.3 }, ...more },
});

it("rates, SIRs and utilization of two wards are tested, each as first / second with its limits in words", () => {
  const [rate, sir, use] = compareTwoWards(
    side({}),
    side({ code: "3E", catheterDays: 250, watchedDays: 250, infections: 1 }),
  );
  // By hand: (4 / 500) / (1 / 250), (4 / 3.3) / (1 / 3.3), 0.5 / 0.25; log limits of a ratio of proportions by hand:
  // 2 exp(+-1.959964 sqrt(1/500 - 1/1000 + 1/250 - 1/1000)) = 1.7421 to 2.2961.
  expect([rate?.first, rate?.second, rate?.comparison.ratio]).toEqual([8, 4, { value: 2 }]);
  expect(sir?.comparison.ratio).toEqual({ value: 4 });
  expect(use?.comparison.ratio).toEqual({ value: 2 });
  expect(use?.comparison.lower.value).toBeCloseTo(2 * Math.exp(-1.959963984540054 * Math.sqrt(0.004)), 9);
  expect(rate?.sentence).toMatch(
    /^The CAUTI rate of ICU \(2026-11\) is 2\.00 times that of 3E \(2026-11\), and may be 0\.\d\d to \d+\.\d\d times it\. If nothing but chance were at work, about \d+ in 1,000 such/,
  );
  expect(use?.sentence).toContain("fewer than 1 in 1,000");
  expect(use?.sentence).toContain("surer than they are");
});

it("what cannot be compared says why", () => {
  const unwatched = side({ infections: null, watchedDays: 0 });
  const [rate, sir] = compareTwoWards(unwatched, side({}));
  expect([rate?.first, rate?.comparison.p]).toEqual([
    null,
    { value: null, reason: "The unit was not under surveillance in this period." },
  ]);
  expect(rate?.sentence).toContain("cannot be given as a multiple of");
  expect(sir?.sentence).toContain("The unit was not under surveillance in this period.");
  const none = { value: null, reason: "No baseline is in use, so nothing is predicted." };
  expect(compareTwoWards(side({ predicted: none }), side({}))[1]?.sentence).toContain(none.reason);
  expect(compareTwoWards(side({ predicted: { value: 0.4 } }), side({}))[1]?.sentence).toContain("fewer than 1.0");
  const noDays = side({ patientDays: 0, catheterDays: 0, watchedDays: 0, infections: 0 });
  expect(compareTwoWards(noDays, side({})).map(({ comparison }) => comparison.ratio.value)).toEqual([null, 0, null]);
});
