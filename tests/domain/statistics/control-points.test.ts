import { expect, it } from "vitest";
import { controlPoints } from "../../../src/domain/statistics/control-points.ts";

it("are the periods with days; one without events has no lower limit, because none at all is no alarm", () => {
  const periods = [
    { events: 2, days: 100 },
    { events: 0, days: 0 },
    { events: 0, days: 200 },
  ];
  const limits = { lower: 0.01, upper: 0.05 };
  expect(controlPoints(periods, [limits, { lower: null, upper: null }, limits])).toEqual([
    { value: 0.02, lower: 0.01, upper: 0.05 },
    { value: 0, lower: null, upper: 0.05 },
  ]);
  expect(controlPoints(periods.slice(0, 1), [])).toEqual([{ value: 0.02, lower: null, upper: null }]);
});
