import { expect, it } from "vitest";
import { catheterKind } from "../../../shared/vocabulary.ts";
import { countsAsIndwelling } from "../../../src/domain/counting/counts-as-catheter-day.ts";

// Source: CDC Patient Safety Component Manual, chapter 7 (key terms), read in the national adaptation of Taiwan.
it("counts the indwelling urethral catheter and none of the other five kinds", () => {
  expect(catheterKind.options.filter(countsAsIndwelling)).toEqual(["indwelling-urethral"]);
  expect(catheterKind.options).toHaveLength(6);
});
