import { describe, expect, it } from "vitest";
import { checkDevices, checkEligibleDates } from "./catheter-cases.ts";
import { checkCriterion, checkDonor, checkEuropean, checkObservation } from "./criteria-cases.ts";
import { type ReferenceCase, readCases, titleOf } from "./read-data.ts";
import { checkAfterAdmissionTimeframe, checkBlocked, checkLocation, checkTypes } from "./repeat-cases.ts";
import {
  checkAfterDischarge,
  checkAfterTimeframe,
  checkBloodstreamPeriod,
  checkCollectionDate,
  checkLaterAdmission,
  checkWindow,
} from "./timeline-cases.ts";

const checks: { ids: RegExp; check: (one: ReferenceCase) => void }[] = [
  { ids: /^A(0[45679]|10)$/, check: checkWindow },
  { ids: /^A12$/, check: checkAfterTimeframe },
  { ids: /^A14$/, check: checkLaterAdmission },
  { ids: /^A16$/, check: checkBloodstreamPeriod },
  { ids: /^A19$/, check: checkAfterDischarge },
  { ids: /^A20$/, check: checkCollectionDate },
  { ids: /^A21$/, check: checkBlocked },
  { ids: /^A22$/, check: checkAfterAdmissionTimeframe },
  { ids: /^A23$/, check: checkTypes },
  { ids: /^B/, check: checkLocation },
  { ids: /^C0[2-8]$/, check: checkEligibleDates },
  { ids: /^C1[289]$/, check: checkDevices },
  { ids: /^F32$/, check: checkDonor },
  { ids: /^F34$/, check: checkObservation },
  { ids: /^F(?!32|34)/, check: checkCriterion },
  { ids: /^G0[1-5]$/, check: checkEuropean },
];

// Cases of catheter days stand with those of counting; here they are asked through whole determinations. The counts of
// a ward (C20) and the census (C21) are no matter of a determination.
const catheterCases = readCases("counting-cases.json").filter(({ id }) => /^C0|^C1/.test(id));
const cases = [...readCases("determination-cases.json"), ...catheterCases];

describe("reference cases of determinations", () => {
  it.each(cases.map((one) => [titleOf(one), one] as const))("%s", (_title, one) => {
    const matching = checks.filter((entry) => entry.ids.test(one.id));
    expect(matching).toHaveLength(1);
    matching[0]?.check(one);
  });

  it("accounts for 45 cases of determinations and 9 of catheter days", () => {
    expect([new Set(cases.map(({ id }) => id)).size, catheterCases.length]).toEqual([54, 9]);
  });
});
