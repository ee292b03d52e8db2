import { describe, expect, it } from "vitest";
import type { NecessityPatient } from "../../../src/domain/necessity/facts.ts";
import { type MonthNecessity, monthNecessity } from "../../../src/domain/necessity/month-necessity.ts";
import { defaultPolicy } from "../../../src/domain/policy/default-policy.ts";
import { textOf } from "../../reference/day-text.ts";
import { march } from "../counting/march-records.ts";
import { wardIds } from "../timeline/written.ts";
import { moved, ward } from "./asked-review.ts";
import { marchDay, patientFrom, policyWith, rulesWith } from "./written-notes.ts";

interface Told {
  readonly patients: readonly NecessityPatient[];
  readonly letter?: keyof typeof wardIds;
  readonly days?: readonly [first: string, last: string];
  readonly now?: string;
  /** Catheter-days as `1:06 1:07`: patient and day. */
  readonly catheterDays?: string;
}

/** The figures of ward A over some days of March, with censuses at 10:00. */
function monthOf({
  patients,
  letter = "A",
  days: [first, last] = ["01", "31"],
  now = "12/10:00",
  ...told
}: Told): MonthNecessity {
  const catheterDays = (told.catheterDays ?? "").split(" ").filter((text) => text !== "");
  return monthNecessity({
    ...{ wardId: wardIds[letter], patients, first: marchDay(first), last: marchDay(last) },
    now: march(now.slice(0, 2), now.slice(3)),
    catheterDays: catheterDays.map((text) => {
      const [patientId, day = ""] = text.split(":");
      return { patientId: Number(patientId), day: marchDay(day) };
    }),
    censusAt: (day) => march(textOf(day).slice(8), "10:00"),
    rules: rulesWith(policyWith({ thresholdDays: 3 })),
  });
}

/** The rows of a figure as `3:07 3:08`: catheter and day. */
const text = (rows: MonthNecessity[keyof MonthNecessity]) =>
  rows.map(({ catheterId, day }) => `${catheterId}:${textOf(day).slice(8)}`).join(" ");

describe("the reviews of a month", () => {
  const notes = [
    ...["review 3 06/09:00 keep for end-of-life", "review 3 07/13:00 keep for end-of-life", "review 3 09/09:00 ask"],
    "review 3 05/10:00 keep for end-of-life",
  ];
  const reviews = (told: Omit<Told, "patients">) => {
    const month = monthOf({ patients: [patientFrom(ward, notes)], ...told });
    const {
      reviewsDue: due,
      reviewsInTime: inTime,
      reviewsLate: late,
      reviewsMissed: missed,
      reviewsOverdue: overdue,
    } = month;
    return { due: text(due), inTime: text(inTime), late: text(late), missed: text(missed), overdue: text(overdue) };
  };

  it("are those whose hour has passed, each in time, late, missed or still overdue", () => {
    expect(reviews({ now: "09/12:00" })).toEqual({
      ...{ due: "3:06 3:07 3:08", inTime: "3:06", late: "3:07", missed: "3:08", overdue: "" },
    });
    expect(reviews({ now: "09/12:01" })).toEqual({
      ...{ due: "3:06 3:07 3:08 3:09", inTime: "3:06", late: "3:07", missed: "3:08", overdue: "3:09" },
    });
    expect(reviews({ now: "10/00:00" })).toMatchObject({ missed: "3:08 3:09", overdue: "" });
  });

  it("are those of the days that are asked for", () => {
    expect(reviews({ days: ["07", "08"] }).due).toBe("3:07 3:08");
    expect(reviews({ days: ["01", "05"] }).due).toBe("");
  });

  it("belong to the ward on which the patient was when they were due", () => {
    const patients = [patientFrom(moved("12:30"))];
    const due = (letter: "A" | "B") => text(monthOf({ patients, letter, now: "09/13:00" }).reviewsDue);
    expect([due("A"), due("B")]).toEqual(["3:06 3:07", "3:08 3:09"]);
  });

  it("are in the order of days and catheters, of all patients", () => {
    const other = {
      ...patientFrom(["stay 8: 05/08:00-", "ward stay 9: A 05/08:00-", "catheter 2: 05/08:30-"]),
      patientId: 2,
    };
    expect(text(monthOf({ patients: [patientFrom(ward), other], now: "07/13:00" }).reviewsDue)).toBe(
      "2:06 3:06 2:07 3:07",
    );
  });
});

describe("the days of a month", () => {
  const catheterDays = "1:06 1:07 1:08 1:09";
  const notes = ["review 3 07/09:00 keep for end-of-life", "review 3 08/09:00 keep for incontinence"];

  it("are the ward's catheter-days past the threshold, without an indication, outside the policy, or doubtful", () => {
    const month = monthOf({ patients: [patientFrom(ward, notes)], catheterDays });
    expect(text(month.daysPastThreshold)).toBe("3:08 3:09");
    expect(text(month.daysWithoutIndication)).toBe("3:06");
    expect(text(month.daysOutsidePolicy)).toBe("3:08 3:09");
    expect(text(month.daysDoubtful)).toBe("");
    expect(text(monthOf({ patients: [patientFrom(ward)], catheterDays }).daysDoubtful)).toBe("3:07 3:08 3:09");
  });

  it("are none without catheter-days", () => {
    const month = monthOf({ patients: [patientFrom(ward, notes)] });
    expect(
      [month.daysPastThreshold, month.daysWithoutIndication, month.daysOutsidePolicy, month.daysDoubtful].flat(),
    ).toEqual([]);
  });

  it("do not reach beyond now, also when the ledger does", () => {
    const month = (now: string) =>
      text(monthOf({ patients: [patientFrom(ward)], catheterDays, now }).daysWithoutIndication);
    expect(["08/09:59", "08/10:00"].map(month)).toEqual(["3:06 3:07", "3:06 3:07 3:08"]);
  });

  it("that do not fit the patients are a bug, not a figure", () => {
    const patients = [patientFrom(ward)];
    expect(() => monthOf({ patients, catheterDays: "1:06 7:06" })).toThrow(
      "patient 7 has catheter-days and is not given",
    );
    expect(() => monthOf({ patients, catheterDays: "1:04" })).toThrow("no catheter was in place");
  });
});

describe("the care checks of a month", () => {
  const all = defaultPolicy.bundle.map(({ code }) => `${code}=kept`).join(",");
  const checks = (told: Told) => {
    const month = monthOf(told);
    const {
      careChecks: made,
      careChecksKept: kept,
      careChecksBroken: broken,
      careChecksIncomplete: incomplete,
    } = month;
    return { made: text(made), kept: text(kept), broken: text(broken), incomplete: text(incomplete) };
  };

  it("are all or none: kept in every item, or broken in one, or incomplete", () => {
    const notes = [
      ...[`care-check 3 06/10:00 ${all}`, `care-check 3 06/18:00 ${all.replace("secured=kept", "secured=broken")}`],
      ...["care-check 3 07/10:00 secured=kept", "care-check 3 07/11:00", `care-check 3 08/10:00 ${all} voided`],
    ];
    expect(checks({ patients: [patientFrom(ward, notes)] })).toEqual({
      ...{ made: "3:06 3:06 3:07 3:07", kept: "3:06", broken: "3:06", incomplete: "3:07 3:07" },
    });
  });

  it("belong to the ward on which they were made, also in the minute of leaving it", () => {
    const lines = [
      "stay 1: 05/08:00-08/10:00",
      "ward stay 2: A 05/08:00-07/12:00",
      "ward stay 4: B 07/12:00-08/10:00",
      "catheter 3: 05/09:00-",
    ];
    const notes = ["05/10:00", "07/11:59", "07/12:00", "08/10:00"].map((time) => `care-check 3 ${time} ${all}`);
    const patients = [patientFrom(lines, notes)];
    expect([checks({ patients }).made, checks({ patients, letter: "B" }).made]).toEqual(["3:05 3:07", "3:07 3:08"]);
  });

  it("are those of the days that are asked for, made by now, of catheters that count", () => {
    const notes = ["05/10:00", "07/10:00", "09/10:00"].map((time) => `care-check 3 ${time} ${all}`);
    const patients = [patientFrom(ward, notes)];
    expect(checks({ patients, days: ["06", "08"] }).made).toBe("3:07");
    expect(checks({ patients, now: "08/10:00" }).made).toBe("3:05 3:07");
    const other = [patientFrom([...ward.slice(0, 2), "catheter 3: 05/09:00- suprapubic"], notes)];
    expect(checks({ patients: other }).made).toBe("");
  });
});
