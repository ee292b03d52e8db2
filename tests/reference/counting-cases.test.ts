import { describe, expect, it } from "vitest";
import { checkDevice, checkEligibility } from "./check-catheter-days.ts";
import { checkAgreement, checkDailySums, checkSample, checkSamplingEligibility } from "./check-denominators.ts";
import { checkCountTime, checkPopulationRate, checkRate, checkSixMonths, checkUtilization } from "./check-rates.ts";
import { type ReferenceCase, readCases, titleOf } from "./read-data.ts";

/** Cases that need more than a count's arithmetic, and where they are run. */
const coveredElsewhere: Record<string, string> = {
  C21: "needs the patient-day rows: a catheter between two censuses has an eligibility day and no catheter-day",
};

const checks: { ids: RegExp; check: (one: ReferenceCase) => void }[] = [
  { ids: /^C0[2-8]$/, check: checkEligibility },
  { ids: /^C1[289]$/, check: checkDevice },
  { ids: /^C20$/, check: checkDailySums },
  { ids: /^D01$/, check: checkSample },
  { ids: /^D03$/, check: checkSamplingEligibility },
  { ids: /^D0[67]$/, check: checkAgreement },
  { ids: /^E1\d\d$/, check: checkRate },
  { ids: /^E30\d$/, check: checkUtilization },
  { ids: /^E320$/, check: checkSixMonths },
  { ids: /^E321$/, check: checkCountTime },
  { ids: /^E323$/, check: checkPopulationRate },
];

const cases = readCases("counting-cases.json");
const run = cases.filter((one) => !(one.id in coveredElsewhere));

describe("reference cases of counting", () => {
  it.each(run.map((one) => [titleOf(one), one] as const))("%s", (_title, one) => {
    const matching = checks.filter((entry) => entry.ids.test(one.id));
    expect(matching).toHaveLength(1);
    matching[0]?.check(one);
  });

  it(`accounts for all 36 cases: ${run.length} run here, ${Object.keys(coveredElsewhere).join(", ")} covered elsewhere`, () => {
    const ids = cases.map((one) => one.id);
    expect(new Set(ids).size).toBe(36);
    expect([...run.map((one) => one.id), ...Object.keys(coveredElsewhere)].sort()).toEqual([...ids].sort());
  });
});
