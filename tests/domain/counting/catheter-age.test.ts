import { describe, expect, it } from "vitest";
import { catheterAge } from "../../../src/domain/counting/catheter-age.ts";
import { dayOf } from "../../reference/day-text.ts";

describe("the age of a catheter", () => {
  // Source: insertion day is day 1, CDC Patient Safety Component Manual, chapter 7.
  it("is 1 on the day of insertion and grows by one each facility day", () => {
    const catheter = { insertedOn: dayOf("2024-02-27"), firstInpatientDay: dayOf("2024-02-25") };
    expect(catheterAge({ ...catheter, day: dayOf("2024-02-27") })).toEqual({ days: 1, atLeast: false });
    expect(catheterAge({ ...catheter, day: dayOf("2024-03-01") })).toEqual({ days: 4, atLeast: false });
  });

  it("counts a known insertion before the stay from that insertion", () => {
    const catheter = { insertedOn: dayOf("2024-07-20"), firstInpatientDay: dayOf("2024-08-01") };
    expect(catheterAge({ ...catheter, day: dayOf("2024-08-01") })).toEqual({ days: 13, atLeast: false });
  });

  it("counts an unknown insertion from the first inpatient day and says at least", () => {
    const catheter = { insertedOn: null, firstInpatientDay: dayOf("2024-08-01") };
    expect(catheterAge({ ...catheter, day: dayOf("2024-08-01") })).toEqual({ days: 1, atLeast: true });
    expect(catheterAge({ ...catheter, day: dayOf("2024-08-05") })).toEqual({ days: 5, atLeast: true });
  });

  // Source: IANA time zone database, Pacific/Apia had no 2011-12-30.
  it("does not count the date that Pacific/Apia skipped", () => {
    const dayExists = (day: number) => day !== dayOf("2011-12-30");
    const catheter = { insertedOn: dayOf("2011-12-29"), firstInpatientDay: dayOf("2011-12-29"), dayExists };
    expect(catheterAge({ ...catheter, day: dayOf("2011-12-31") }).days).toBe(2);
  });

  it("has no age before day 1", () => {
    expect(() => catheterAge({ insertedOn: 10, firstInpatientDay: 1, day: 9 })).toThrow("before day 1");
  });
});
