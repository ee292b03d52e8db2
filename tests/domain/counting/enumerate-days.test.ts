import { describe, expect, it } from "vitest";
import { enumeratedPatientDays } from "../../../src/domain/counting/enumerate-days.ts";
import { timelineOf, wardIds } from "../timeline/written.ts";

/** A census at 10 on day 1, at 20 on day 2, and so on to day 9. */
const days = Array.from({ length: 9 }, (_, i) => i + 1);
const census = { days: Int32Array.from(days), instants: Float64Array.from(days.map((day) => day * 10)) };
/** Ward C is for outpatients; ward B is an inpatient ward from day 4 on. */
const isInpatient = (wardId: number, day: number) => wardId === wardIds.A || (wardId === wardIds.B && day >= 4);

/** The days that a record earns as text: `2A` on ward A on day 2, `3A+` with a catheter. */
function countedDays(...lines: readonly string[]): string {
  const letters = Object.fromEntries(Object.entries(wardIds).map(([letter, id]) => [id, letter]));
  return enumeratedPatientDays(timelineOf(...lines), { census, isInpatient })
    .map((row) => `${row.day}${letters[row.wardId]}${row.catheter ? "+" : ""}`)
    .join(" ");
}

describe("patient-days by asking every census", () => {
  it("are those at which the patient was there: from the beginning on, no longer at the end", () => {
    expect(countedDays("stay 1: 10-30", "ward stay 2: A 10-30")).toBe("1A 2A");
    expect(countedDays("stay 1: 11-29", "ward stay 2: A 11-29")).toBe("2A");
    expect(countedDays("stay 1: 11-19", "ward stay 2: A 11-19")).toBe("");
  });

  it("follow the ward, and only inpatient wards earn them", () => {
    const moves = ["ward stay 2: C 5-15", "ward stay 3: A 15-25", "ward stay 4: B 25-55"];
    expect(countedDays("stay 1: 5-55", ...moves)).toBe("2A 4B 5B");
  });

  it("stay with the ward that holds the bed during a procedure, and with nobody during leave or unknown absence", () => {
    const away = (kind: string) => countedDays("stay 1: 5-45", `ward stay 2: A 5-15${kind}`, "ward stay 3: A 35-45");
    expect(away(" then procedure")).toBe("1A 2A 3A 4A");
    expect(away(" then leave")).toBe("1A 4A");
    expect(away("")).toBe("1A 4A");
    expect(countedDays("stay 1: 5-35", "ward stay 2: A 5-15 then procedure")).toBe("1A 2A 3A");
  });

  it("leave out stretches that still last", () => {
    expect(countedDays("stay 1: 5-", "ward stay 2: A 5-25", "ward stay 3: A 25-")).toBe("1A 2A");
    expect(countedDays("stay 1: 5-", "ward stay 2: A 5-15 then procedure")).toBe("1A");
  });

  it("have a catheter when an indwelling urethral one was in place at the census", () => {
    const stay = ["stay 1: 5-65", "ward stay 2: A 5-65"];
    expect(countedDays(...stay, "catheter 3: 20-40")).toBe("1A 2A+ 3A+ 4A 5A 6A");
    expect(countedDays(...stay, "catheter 3: 21-29")).toBe("1A 2A 3A 4A 5A 6A");
    expect(countedDays(...stay, "catheter 3: 15-25", "catheter 4: 25-35")).toBe("1A 2A+ 3A+ 4A 5A 6A");
    expect(countedDays(...stay, "catheter 3: 15-45 suprapubic", "catheter 4: 35-")).toBe("1A 2A 3A 4A+ 5A+ 6A+");
  });

  it("begin with the stay for a catheter in place on arrival, and end with the last time it was known in place", () => {
    const stay = ["stay 1: 5-65", "ward stay 2: A 5-65"];
    expect(countedDays(...stay, "catheter 3: arrived ?-25")).toBe("1A+ 2A+ 3A 4A 5A 6A");
    expect(countedDays(...stay, "catheter 3: 15-35..55")).toBe("1A 2A+ 3A+ 4A 5A 6A");
  });

  it("count once on a day that two stays claim, for the first of them", () => {
    const rows = enumeratedPatientDays(
      timelineOf("stay 1: 5-25", "ward stay 2: A 5-25", "stay 4: 20-35", "ward stay 5: A 20-35"),
      { census, isInpatient },
    );
    expect(rows.map((row) => [row.day, row.stayId])).toEqual([
      [1, 1],
      [2, 1],
      [3, 4],
    ]);
  });

  it("do not look at what was voided", () => {
    const timeline = timelineOf("stay 1: 5-35", "ward stay 2: A 5-35", "catheter 3: 15-35");
    const [stay] = timeline.stays;
    if (!stay) throw new Error("no stay");
    const voided = { voidReason: "recorded in error" };
    const without = (part: object) =>
      enumeratedPatientDays({ patientId: 1, stays: [{ ...stay, ...part }] }, { census, isInpatient });
    expect(without(voided)).toEqual([]);
    expect(without({ wardStays: stay.wardStays.map((w) => ({ ...w, ...voided })) })).toEqual([]);
    expect(without({ catheters: stay.catheters.map((c) => ({ ...c, ...voided })) }).map((r) => r.catheter)).toEqual([
      ...[false, false, false],
    ]);
  });
});
