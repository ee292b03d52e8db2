import { describe, expect, it } from "vitest";
import { assertDailyCount } from "../../../src/domain/counting/daily-count.ts";

describe("a daily count", () => {
  it("may have a catheter in every patient", () => {
    expect(() => assertDailyCount({ patients: 12, catheters: 12 })).not.toThrow();
    expect(() => assertDailyCount({ patients: 0, catheters: 0 })).not.toThrow();
  });

  it("never has more patients with a catheter than patients", () => {
    expect(() => assertDailyCount({ patients: 12, catheters: 13 })).toThrow("13 patients with a catheter");
  });

  it("is in whole patients", () => {
    expect(() => assertDailyCount({ patients: 12.5, catheters: 1 })).toThrow("patients must be a whole number");
    expect(() => assertDailyCount({ patients: 12, catheters: -1 })).toThrow("catheters must be a whole number");
  });
});
