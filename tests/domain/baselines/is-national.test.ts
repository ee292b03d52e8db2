import { expect, it } from "vitest";
import type { BaselineOrigin } from "../../../src/domain/baselines/baseline.ts";
import { earlierPeriod } from "../../../src/domain/baselines/earlier-period.ts";
import { isNational } from "../../../src/domain/baselines/is-national.ts";

const origin: BaselineOrigin = {
  ...{ id: "a", name: "A", source: "ours", year: "2025", definition: "d", population: "p", edition: "1" },
};

it("an earlier period of one's own is not of other hospitals; rates by type of ward and models are", () => {
  const own = earlierPeriod(origin, [{ ward: "4N", infections: 2, catheterDays: 1_000, patientDays: 3_000 }]);
  expect(isNational(own)).toBe(false);
  expect(isNational({ kind: "pooled", origin, by: "ward-type", rates: [] })).toBe(true);
  expect(isNational({ kind: "model", origin, predicts: "infections", intercept: 0, terms: [] })).toBe(true);
});
