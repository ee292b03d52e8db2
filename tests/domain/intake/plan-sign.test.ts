import { describe, expect, it } from "vitest";
import type { RecordedSign } from "../../../src/domain/cultures/sign.ts";
import { hour, move, plan, sign } from "./lines.ts";

const stayOn = move(2, { from: hour(8), to: hour(100) });
const celsius = (hundredths: number) => ({ hundredths, unit: "C" as const });

function planned(lines: ReturnType<typeof sign>[], before: readonly RecordedSign[] = [], seen = lines.slice(0, 0)) {
  const made = plan([stayOn, ...lines], undefined, before.length === 0 ? 100 : 200, [], {
    cultures: { specimens: [], signs: before },
    seen,
  });
  const after = new Map(before.map((one) => [one.id, one]));
  for (const { now } of made.cultures.signs) after.set(now.id, now);
  return { outcomes: made.outcomes.slice(1), after: [...after.values()] };
}

describe("lines of signs", () => {
  it("are stored by day, and by time where somebody gave one; a temperature as it was measured", () => {
    const lines = [
      sign(2, { day: 1, value: celsius(3_840) }),
      sign(3, { day: 1, time: "09:30", value: { hundredths: 10_110, unit: "F" } }),
      sign(4, { day: 2, sign: "dysuria", present: "absent" }),
      sign(5, { day: 2, sign: "suprapubic-tenderness", present: "present", other_cause: true }),
    ];
    const { outcomes, after } = planned(lines);
    expect(outcomes).toEqual(["accepted", "accepted", "accepted", "accepted"]);
    expect(after).toMatchObject([
      { sign: "temperature", day: 1, at: null, finding: "present", temperature: celsius(3_840), writtenBy: 7 },
      { at: hour(33.5), temperature: { hundredths: 10_110, unit: "F" } },
      { sign: "dysuria", finding: "absent", temperature: null, otherCause: false },
      { sign: "suprapubic-tenderness", otherCause: true, version: 1 },
    ]);
    expect(planned(lines, after)).toEqual({ outcomes: ["unchanged", "unchanged", "unchanged", "unchanged"], after });
  });

  it("that say something else of the same sign and time correct it; of one folder they contradict each other", () => {
    const { after } = planned([sign(2, { day: 1, value: celsius(3_840) })]);
    const corrected = planned([sign(2, { day: 1, value: celsius(3_790) })], after);
    expect(corrected.after).toMatchObject([{ id: after[0]?.id, version: 2, temperature: celsius(3_790) }]);
    const both = [sign(2, { day: 1, value: celsius(3_840) }), sign(3, { day: 1, value: celsius(3_790) })];
    expect(planned(both).outcomes).toEqual(["accepted", "line-contradicts day see signs.csv line 2"]);
    expect(planned(both.slice(1), after, both.slice(0, 1)).outcomes).toEqual([
      "line-contradicts day see signs.csv line 2",
    ]);
  });

  it("of a chart review stand beside what was found, one for each reading of the chart", () => {
    const review = { day: 1, last_day: 4, sign: "dysuria", present: "not-documented" } as const;
    const lines = [
      sign(2, { day: 1, sign: "dysuria", present: "absent" }),
      sign(3, { ...review, reviewed: hour(100) }),
      sign(4, { ...review, last_day: 5, reviewed: hour(130) }),
    ];
    const { outcomes, after } = planned(lines);
    expect(outcomes).toEqual(["accepted", "accepted", "accepted"]);
    expect(after).toMatchObject([
      { finding: "absent", lastDay: null, readAt: null },
      { finding: "not-documented", day: 1, lastDay: 4, readAt: hour(100), at: null },
      { finding: "not-documented", day: 1, lastDay: 5, readAt: hour(130) },
    ]);
    expect(planned(lines, after)).toEqual({ outcomes: ["unchanged", "unchanged", "unchanged"], after });
    const refusal = (values: Parameters<typeof sign>[1]) => planned([sign(2, { ...review, ...values })]).outcomes[0];
    expect(refusal({})).toBe("sign-contradicts reviewed");
    expect(refusal({ reviewed: hour(10) })).toBe("sign-contradicts reviewed");
    expect(refusal({ reviewed: hour(600) })).toBe("in-the-future reviewed");
    expect(refusal({ reviewed: hour(100), last_day: 0 })).toBe("sign-contradicts last_day");
    expect(refusal({ reviewed: hour(200), last_day: 9 })).toBe("outside-surveillance-days last_day");
    expect(refusal({ reviewed: hour(100), time: "08:00" })).toBe("sign-contradicts time");
    expect(refusal({ present: "absent", last_day: null, reviewed: hour(100) })).toBe("sign-contradicts reviewed");
  });

  it("outside the usual are marked, and refused where no living body has it", () => {
    expect(planned([sign(2, { day: 1, value: celsius(4_250) })]).outcomes).toEqual(["unusual-value"]);
    expect(planned([sign(2, { day: 1, value: celsius(10_110) })]).outcomes).toEqual(["out-of-bounds value"]);
  });

  it("are refused for what they lack or contradict", () => {
    const refusal = (values: Parameters<typeof sign>[1]) => planned([sign(2, { day: 1, ...values })]).outcomes[0];
    expect(refusal({ sign: "dysuria" })).toBe("csv-cell-empty present");
    expect(refusal({ sign: "dysuria", value: celsius(3_800) })).toBe("sign-contradicts value");
    expect(refusal({ sign: "dysuria", present: "absent", other_cause: true })).toBe("sign-contradicts other_cause");
    expect(refusal({ stay: "S9", present: "present" })).toBe("stay-unknown stay");
    expect(refusal({ day: 9, value: celsius(3_800) })).toBe("outside-surveillance-days day");
    expect(refusal({ day: 11, value: celsius(3_800) })).toBe("in-the-future day");
  });

  it("of a time of today that has not come are refused", () => {
    const open = move(2, { from: hour(8) });
    const { outcomes } = plan([open, sign(2, { day: 10, time: "23:00", value: celsius(3_800) })]);
    expect(outcomes).toEqual(["accepted", "in-the-future time"]);
  });
});
