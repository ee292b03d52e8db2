import { describe, expect, it } from "vitest";
import { catheterPresences } from "../../../src/domain/necessity/catheter-presence.ts";
import { type Confirmation, confirmationAt } from "../../../src/domain/necessity/confirmation.ts";
import type { NecessityCatheter } from "../../../src/domain/necessity/facts.ts";
import { march } from "../counting/march-records.ts";
import { patientFrom, rulesWith } from "./written-notes.ts";

const instant = (time: string) => march(time.slice(0, 2), time.slice(3));

interface Told {
  readonly catheter: string;
  readonly notes?: readonly string[];
  readonly with?: Partial<NecessityCatheter>;
  readonly at: string;
}

/** What is known at a time of a catheter in a stay from 5 March 08:00 on, by a policy of 48 hours. */
function known(told: Told): Confirmation {
  const patient = patientFrom(
    ["stay 1: 05/08:00-", "ward stay 2: A 05/08:00-", `catheter 3: ${told.catheter}`],
    told.notes,
  );
  const [presence] = catheterPresences(patient, rulesWith(), march("25", "10:00"));
  if (!presence) throw new Error("the record has a catheter");
  const catheter = { ...presence.catheter, ...told.with };
  return confirmationAt({ ...presence, catheter }, instant(told.at), { confirmationHours: 48 });
}

describe("a catheter that nobody has seen for the hours of the policy", () => {
  it.each<[title: string, told: Told, seen: string | null, from: string | null, doubtful: boolean]>([
    ["was seen at its insertion", { catheter: "05/09:00-", at: "07/08:59" }, "05/09:00", "07/09:00", false],
    [
      "is doubtful from the very end of the hours on",
      { catheter: "05/09:00-", at: "07/09:00" },
      "05/09:00",
      "07/09:00",
      true,
    ],
    [
      "was in place on admission when it came with the patient",
      { catheter: "arrived ?-", at: "07/08:00" },
      null,
      "07/08:00",
      true,
    ],
    [
      "was in place on admission when it was inserted before",
      { catheter: "arrived 01/10:00-", at: "07/07:59" },
      "01/10:00",
      "07/08:00",
      false,
    ],
    [
      "was seen",
      { catheter: "05/09:00-", with: { lastSeenAt: instant("06/10:00") }, at: "07/10:00" },
      "06/10:00",
      "08/10:00",
      false,
    ],
    [
      "was reviewed",
      { catheter: "05/09:00-", notes: ["review 3 06/11:00 ask"], at: "07/10:00" },
      "06/11:00",
      "08/11:00",
      false,
    ],
    [
      "was emptied",
      { catheter: "05/09:00-", notes: ["urine-output 3 06/12:00", "confirmation 3 06/10:00"], at: "09/10:00" },
      "06/12:00",
      "08/12:00",
      true,
    ],
    [
      "has a note that was voided",
      { catheter: "05/09:00-", notes: ["confirmation 3 06/12:00 voided"], at: "07/10:00" },
      "05/09:00",
      "07/09:00",
      true,
    ],
    [
      "has notes that were not loaded",
      {
        catheter: "05/09:00-",
        with: { noted: { first: instant("06/01:00"), last: instant("06/10:00") } },
        at: "07/10:00",
      },
      "06/10:00",
      "08/10:00",
      false,
    ],
    [
      "has a note only later than it is asked for",
      { catheter: "05/09:00-", notes: ["confirmation 3 08/12:00"], at: "08/10:00" },
      "05/09:00",
      "07/09:00",
      true,
    ],
    ["was removed", { catheter: "05/09:00-15/10:00", at: "12/10:00" }, "05/09:00", null, false],
    ["was found removed", { catheter: "05/09:00-14/10:00..15/10:00", at: "12/10:00" }, "05/09:00", null, false],
  ])("%s", (_, told, seen, from, doubtful) => {
    expect(known(told)).toEqual({
      seenWithoutHour: false,
      lastSeenAt: seen === null ? null : instant(seen),
      doubtfulFrom: from === null ? null : instant(from),
      doubtful,
    });
  });

  it("says where only the day is known on which it was last seen", () => {
    const marks = ["no-hour:insertedAt"] as const;
    expect(known({ catheter: "05/00:00-", with: { marks }, at: "05/10:00" }).seenWithoutHour).toBe(true);
    const notes = ["confirmation 3 06/10:00"];
    expect(known({ catheter: "05/00:00-", with: { marks }, notes, at: "06/12:00" }).seenWithoutHour).toBe(false);
  });

  // 2024-03-10 has 23 hours in New York: hours are hours, whatever the clocks show.
  it("counts hours that pass, also where the clocks change", () => {
    expect(known({ catheter: "09/09:00-", at: "11/09:59" }).doubtful).toBe(false);
    expect(known({ catheter: "09/09:00-", at: "11/10:00" }).doubtful).toBe(true);
  });
});
