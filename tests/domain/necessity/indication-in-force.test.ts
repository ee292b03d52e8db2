import { describe, expect, it } from "vitest";
import { catheterPresences } from "../../../src/domain/necessity/catheter-presence.ts";
import { type IndicationInForce, indicationInForce } from "../../../src/domain/necessity/indication-in-force.ts";
import { defaultPolicy } from "../../../src/domain/policy/default-policy.ts";
import { march } from "../counting/march-records.ts";
import { patientFrom, rulesWith } from "./written-notes.ts";

/** The indication in force at a time, of a catheter that was inserted on 5 March for `inserted`. */
function inForce(inserted: string | null, notes: readonly string[], time: string): IndicationInForce | null {
  const patient = patientFrom(["stay 1: 05/08:00-", "ward stay 2: A 05/08:00-", "catheter 3: 05/09:00-"], notes);
  const stays = patient.stays.map((stay) => ({
    ...stay,
    catheters: stay.catheters.map((catheter) => ({ ...catheter, indication: inserted })),
  }));
  const [presence] = catheterPresences({ ...patient, stays }, rulesWith(), march("20", "10:00"));
  if (!presence) throw new Error("the record has a catheter");
  return indicationInForce(presence, march(time.slice(0, 2), time.slice(3)), defaultPolicy);
}

const text = (found: IndicationInForce | null) =>
  found && `${found.code} ${found.accepted ? "accepted" : "outside"} ${found.noteId ?? "insertion"}`;

describe("the indication in force", () => {
  it.each<[title: string, inserted: string | null, notes: string[], time: string, found: string | null]>([
    ["is none when none was recorded", null, [], "07/10:00", null],
    ["is that of the insertion", "perioperative", [], "07/10:00", "perioperative accepted insertion"],
    ["can be one that the policy does not accept", "incontinence", [], "07/10:00", "incontinence outside insertion"],
    ["can be one that nobody lists", "of-before", [], "07/10:00", "of-before outside insertion"],
    [
      "is that of a review that kept it",
      null,
      ["review 3 06/09:00 keep for end-of-life"],
      "07/10:00",
      "end-of-life accepted 1",
    ],
    [
      "is that of the last review",
      "perioperative",
      ["review 3 07/09:00 keep for incontinence", "review 3 06/09:00 keep for end-of-life"],
      "07/10:00",
      "incontinence outside 1",
    ],
    [
      "is not yet that of a later review",
      "perioperative",
      ["review 3 07/09:00 keep for end-of-life"],
      "07/08:59",
      "perioperative accepted insertion",
    ],
    [
      "is that of a review in its very minute",
      "perioperative",
      ["review 3 07/09:00 keep for end-of-life"],
      "07/09:00",
      "end-of-life accepted 1",
    ],
    [
      "is not changed by a review that asks or removes",
      "perioperative",
      ["review 3 06/09:00 ask", "review 3 06/10:00 remove for other"],
      "07/10:00",
      "perioperative accepted insertion",
    ],
    [
      "is not changed by a review that keeps without saying why",
      "perioperative",
      ["review 3 06/09:00 keep"],
      "07/10:00",
      "perioperative accepted insertion",
    ],
    ["is not changed by a voided review", null, ["review 3 06/09:00 keep for other voided"], "07/10:00", null],
  ])("%s", (_, inserted, notes, time, found) => {
    expect(text(inForce(inserted, notes, time))).toBe(found);
  });
});
