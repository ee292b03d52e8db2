import { describe, expect, it } from "vitest";
import { type CatheterDay, catheterDay } from "../../../src/domain/necessity/catheter-day.ts";
import { catheterPresences } from "../../../src/domain/necessity/catheter-presence.ts";
import type { NecessityPatient } from "../../../src/domain/necessity/facts.ts";
import { march } from "../counting/march-records.ts";
import { wardIds } from "../timeline/written.ts";
import { ward } from "./asked-review.ts";
import { marchDay, patientFrom, policyWith, rulesWith } from "./written-notes.ts";

const policy = policyWith({ thresholdDays: 4, thresholdByIndication: { perioperative: 2 } });

/** The catheter-day of a patient, by a census at a time of that day, as known at another. */
function dayOfPatient(patient: NecessityPatient, census: string, now = "25/10:00"): CatheterDay {
  const rules = rulesWith(policy);
  const known = march(now.slice(0, 2), now.slice(3));
  const at = { wardId: wardIds.A, day: marchDay(census.slice(0, 2)), now: known };
  const instant = march(census.slice(0, 2), census.slice(3));
  return catheterDay(catheterPresences(patient, rules, known), { ...at, census: instant }, rules);
}

/** The same of catheter 3, in place on ward A from 5 March 09:00 on. */
const dayOf = (notes: readonly string[], census: string, now?: string) =>
  dayOfPatient(patientFrom(ward, notes), census, now);

describe("a catheter-day", () => {
  it("is past the threshold of its eligibility day, by the indication of that day", () => {
    expect(["08/10:00", "09/10:00"].map((census) => dayOf([], census).pastThreshold)).toEqual([false, true]);
    const operated = ["review 3 07/09:00 keep for perioperative"];
    expect(["06/10:00", "07/10:00"].map((census) => dayOf(operated, census).pastThreshold)).toEqual([false, true]);
  });

  it("has the indication that was in force when the day was over, also when the census came before it", () => {
    const notes = ["review 3 07/23:59 keep for end-of-life", "review 3 08/00:00 keep for incontinence"];
    expect(["06/10:00", "07/00:00", "08/00:00"].map((census) => dayOf(notes, census).indication)).toEqual([
      "missing",
      "accepted",
      "outside",
    ]);
  });

  it("has on a day that lasts the indication of now", () => {
    const notes = ["review 3 07/12:00 keep for end-of-life"];
    expect(dayOf(notes, "07/00:00", "07/11:59").indication).toBe("missing");
    expect(dayOf(notes, "07/00:00", "07/12:00").indication).toBe("accepted");
  });

  it("is doubtful when its census lies 48 hours or more after the catheter was last seen", () => {
    expect(["07/08:59", "07/09:00", "12/00:00"].map((census) => dayOf([], census).doubtful)).toEqual([
      false,
      true,
      true,
    ]);
  });

  it("is no longer doubtful once somebody sees the catheter later, or its removal is recorded", () => {
    expect(dayOf(["confirmation 3 12/10:00"], "10/10:00").doubtful).toBe(false);
    expect(dayOf(["confirmation 3 12/10:00"], "10/10:00", "12/09:59").doubtful).toBe(true);
    expect(dayOf(["confirmation 3 12/10:00"], "14/10:00").doubtful).toBe(true);
    const removed = patientFrom([...ward.slice(0, 2), "catheter 3: 05/09:00-20/10:00"]);
    expect(dayOfPatient(removed, "10/10:00").doubtful).toBe(false);
  });

  it("of several catheters is that of the one that was put in last", () => {
    const both = [
      ...ward.slice(0, 2),
      "catheter 3: 06/09:00-",
      "catheter 4: 05/09:00-",
      "catheter 5: 07/09:00-",
      "catheter 6: 07/09:00-08/10:00",
    ];
    const patient = patientFrom(both);
    expect(
      ["05/10:00", "06/10:00", "07/10:00", "08/10:00"].map((census) => dayOfPatient(patient, census).catheterId),
    ).toEqual([4, 3, 6, 5]);
  });

  it("that the record does not have is a bug, not a figure", () => {
    expect(() => dayOf([], "05/08:59")).toThrow(
      "no catheter was in place at the census of the catheter-day on 2024-03-05",
    );
  });
});
