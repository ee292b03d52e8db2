import { describe, expect, it } from "vitest";
import { z } from "zod";
import { closedPatientDays } from "../../../src/domain/counting/patient-days.ts";
import { readLocalTime } from "../../../src/domain/days/local-time.ts";
import { type ReferenceCase, readCases, titleOf } from "../../reference/read-data.ts";
import { at, newYork, oneWard, recordOf, textsOf } from "./march-records.ts";

const betweenCounts = readCases("counting-cases.json").find(({ id }) => id === "C21") as ReferenceCase;

// Rules: counts at the same time every day, and every catheter present at the count: CDC Patient Safety Component
// Manual, chapter 7 (from memory).
describe("the catheter-days among the patient-days", () => {
  it.each([
    {
      title: "from the first count on",
      catheters: ["catheter 3: 05/09:00-07/08:00"],
      rows: ["06 A+", "07 A+", "08 A"],
    },
    {
      title: "in place at the count, not removed at it",
      catheters: ["catheter 3: 06/00:00-07/00:00"],
      rows: ["06 A+", "07 A", "08 A"],
    },
    {
      title: "once a day, whatever number of catheters",
      catheters: ["catheter 3: 05/09:00-07/08:00", "catheter 4: 05/10:00-08/09:00"],
      rows: ["06 A+", "07 A+", "08 A+"],
    },
    {
      title: "through an exchange, unless the count falls between removal and insertion",
      catheters: ["catheter 3: 05/09:00-06/12:00", "catheter 4: 06/12:00-06/23:50", "catheter 5: 07/00:10-"],
      rows: ["06 A+", "07 A", "08 A+"],
    },
    {
      title: "not with a suprapubic catheter",
      catheters: ["catheter 3: 05/09:00- suprapubic"],
      rows: ["06 A", "07 A", "08 A"],
    },
    {
      title: "once with a suprapubic catheter beside a urethral one",
      catheters: ["catheter 3: 05/09:00- suprapubic", "catheter 4: 06/09:00-07/09:00"],
      rows: ["06 A", "07 A+", "08 A"],
    },
    {
      title: "from the admission, when it was in place on arrival and nobody knows since when",
      catheters: ["catheter 3: arrived ?-06/09:00"],
      rows: ["06 A+", "07 A", "08 A"],
    },
    {
      title: "until it was last known to be in place",
      catheters: ["catheter 3: 05/09:00-06/12:00..07/12:00"],
      rows: ["06 A+", "07 A", "08 A"],
    },
  ])("$title", ({ catheters, rows }) => {
    expect(textsOf(closedPatientDays(recordOf([...oneWard, ...catheters]), at("00:00")))).toEqual(rows);
  });

  it("end with the stay: a catheter still in at discharge does not count in the next stay", () => {
    const lines = [
      ...oneWard,
      "catheter 3: 07/09:00-",
      "stay 4: 08/12:00-10/09:00",
      "ward stay 5: B 08/12:00-10/09:00",
    ];
    expect(textsOf(closedPatientDays(recordOf(lines), at("00:00")))).toEqual(["06 A", "07 A", "08 A+", "09 B", "10 B"]);
  });

  it("go on while the bed is held during a procedure", () => {
    const wardStays = ["ward stay 2: A 05/08:00-05/22:00 then procedure", "ward stay 3: A 06/03:00-07/10:00"];
    const lines = ["stay 1: 05/08:00-07/10:00", ...wardStays, "catheter 4: 05/21:00-06/09:00"];
    expect(textsOf(closedPatientDays(recordOf(lines), at("00:00")))).toEqual(["06 A+", "07 A"]);
  });

  it("leave out a voided catheter", () => {
    const { stays, ...rest } = recordOf([...oneWard, "catheter 3: 05/09:00-"]);
    const voided = stays.map((s) => ({ ...s, catheters: s.catheters.map((c) => ({ ...c, voidReason: "none" })) }));
    expect(textsOf(closedPatientDays({ ...rest, stays: voided }, at("00:00")))).toEqual(["06 A", "07 A", "08 A"]);
  });

  it(titleOf(betweenCounts), () => {
    const said = z.object({ count_time_daily: z.string(), IUC_inserted: z.string(), IUC_removed: z.string() });
    const { count_time_daily: time, IUC_inserted: inserted, IUC_removed: removed } = said.parse(betweenCounts.inputs);
    const [from, to] = [inserted, removed].map((text) => readLocalTime(text, newYork).instant);
    const rows = closedPatientDays(recordOf([...oneWard, `catheter 3: ${from}-${to}`]), at(time));
    const expected = z.number().parse(betweenCounts.expected.denominator_catheter_days);
    expect(rows.filter((row) => row.catheter)).toHaveLength(expected);
    expect(rows).toHaveLength(3);
  });
});
