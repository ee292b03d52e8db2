import { expect, it } from "vitest";
import { rulesOf } from "../../../src/domain/criteria/index.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

it("the rules of an edition stand in the order in which a derivation tells them, those that it lacks left out", () => {
  expect(rulesOf(us2024).map(({ id }) => id)).toEqual([
    "urine-culture",
    "infection-window",
    "suti-1a",
    "suti-1b",
    "suti-2",
    "abuti",
    "date-of-event",
    "present-on-admission",
    "repeat-timeframe",
    "catheter-eligibility",
    "location-of-attribution",
    "bloodstream-attribution",
    "after-discharge",
    "readmission",
    "donor-support",
    "after-death",
  ]);
  expect(rulesOf(ecdc2017).map(({ id }) => id)).toEqual([
    "urine-culture-any-organism",
    "evidence-window",
    "uti-a",
    "uti-b",
    "date-of-onset",
    "infection-from-day-3",
    "repeat-14-days",
    "catheter-seven-days",
    "location-on-onset",
    "after-discharge",
    "readmission",
    "after-death",
  ]);
});
