import { describe, expect, it } from "vitest";
import { z } from "zod";
import { predict } from "../../src/domain/baselines/predict.ts";
import { populationSir } from "../../src/domain/statistics/population-sir.ts";
import { sur } from "../../src/domain/statistics/sur.ts";
import { longTermAcuteCare } from "../domain/baselines/long-term-acute-care.ts";
import {
  checkCad,
  checkRateRatio,
  checkRateWithLimits,
  checkSir,
  checkSmallCounts,
  checkStrata,
  checkTarget,
  checkWithheld,
} from "./check-metrics.ts";
import { expectPrinted } from "./expect-printed.ts";
import { type ReferenceCase, readCases, titleOf } from "./read-data.ts";
import { figureOf } from "./read-statistics.ts";

const number = z.number();

/** What the model of long-term acute care predicts for one hospital. */
function checkPredicted({ inputs, expected }: ReferenceCase): void {
  const hospital = { ward: "LTAC", wardType: null, catheterDays: number.parse(inputs.catheter_days), patientDays: 0 };
  const factors = {
    "average length of stay": number.parse(inputs.average_length_of_stay_days),
    "share of beds that are intensive care": number.parse(inputs.proportion_of_beds_that_are_ICU),
  };
  const { predicted } = predict(longTermAcuteCare, "infections", [{ ...hospital, factors }]);
  expectPrinted(figureOf(predicted), number.parse(expected.predicted_4dp), 4);
}

/** Population SIR of one stratum: exactly the SIR x the SUR. */
function checkPopulationSir({ inputs, expected }: ReferenceCase): void {
  const [deviceSir, utilization] = [number.parse(inputs.device_SIR), number.parse(inputs.SUR)];
  const [observed, catheterDays] = [84, 9_000];
  const predictedPerCatheterDay = observed / deviceSir / catheterDays;
  const strata = [{ predictedCatheterDays: catheterDays / utilization, predictedPerCatheterDay }];
  const found = populationSir({ observed, strata, level: 0.95, by: "mid-p" });
  expectPrinted(figureOf(found.ratio), number.parse(expected.population_SIR_2dp), 2);
}

/** A SUR whose predicted days were calculated back from it. */
function checkSur({ inputs, expected }: ReferenceCase): void {
  const observed = number.parse(inputs.observed_catheter_days);
  const predicted = number.parse(expected.predicted_catheter_days_approx);
  const found = sur({ observed, predicted, level: 0.95, by: "mid-p" });
  expectPrinted(figureOf(found.ratio), number.parse(expected.SUR_2dp), 2);
  expect(found.method).toBe("mid-p");
}

const checks: { ids: RegExp; check: (one: ReferenceCase) => void }[] = [
  { ids: /^E20[25]$/, check: checkRateWithLimits },
  { ids: /^E40[25689]$|^E41[015]$/, check: checkSir },
  { ids: /^E404$/, check: checkTarget },
  { ids: /^E416$/, check: checkWithheld },
  { ids: /^E418$/, check: checkSmallCounts },
  { ids: /^E50\d$/, check: checkCad },
  { ids: /^E51[12]$/, check: checkStrata },
  { ids: /^E60[23]$/, check: checkPredicted },
  { ids: /^E612$/, check: checkRateRatio },
  { ids: /^E613$/, check: checkPopulationSir },
  { ids: /^E614$/, check: checkSur },
];

const cases = readCases("metric-cases.json");

describe("reference cases of metrics", () => {
  it.each(cases.map((one) => [titleOf(one), one] as const))("%s", (_title, one) => {
    const matching = checks.filter((entry) => entry.ids.test(one.id));
    expect(matching).toHaveLength(1);
    matching[0]?.check(one);
  });

  it("runs all 26 cases", () => expect(new Set(cases.map(({ id }) => id)).size).toBe(26));
});
