import { expect, it } from "vitest";
import { z } from "zod";
import { endpoints } from "../../shared/api/index.ts";
import type { Day } from "../../shared/day.ts";
import type { PolicyBody } from "../../shared/policy.ts";
import { defaultPolicy } from "../../src/domain/policy/default-policy.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type ApiWard, openApiWard } from "./api-ward.ts";
import { type ReferenceCase, readCases, titleOf } from "./read-data.ts";

const cases = new Map(readCases("review-cases.json").map((one) => [one.id, one]));
const caseOf = (id: string): ReferenceCase => {
  const one = cases.get(id);
  if (!one) throw new Error(`there is no case ${id}`);
  return one;
};

/** The states of the only catheter of a ward at a time. */
async function statesAt(ward: ApiWard, time: string): Promise<string[]> {
  ward.at(time);
  const { rows } = await ward.ask(endpoints.readRound, { wardId: ward.wardId });
  return rows.flatMap((row) => row.states.map(({ state }) => state));
}

/** A policy that a unit would write from a publication: its operations as indications, each with its last day. */
const surgical: PolicyBody = {
  ...defaultPolicy,
  indications: [
    ...defaultPolicy.indications,
    { code: "hemicolectomy", label: "Hemicolectomy", source: "Am J Surg 2020;220:706-713" },
    { code: "abdominoperineal", label: "Abdominoperineal resection", source: "Am J Surg 2020;220:706-713" },
    { code: "prostate-surgery", label: "Transurethral prostate surgery", source: "Am J Manag Care 2019;25(12)" },
  ],
  // Eligibility day 1 is the day of the operation, so day n after it is day n + 1.
  thresholdByIndication: { hemicolectomy: 2, abdominoperineal: 5, "prostate-surgery": 3 },
};

onEachDatabase("reference cases of review prompts through the API", (fresh) => {
  async function withPolicy(body: PolicyBody | null, work: (ward: ApiWard) => Promise<void>): Promise<void> {
    const ward = await openApiWard(await fresh());
    try {
      ward.at("2024-02-01T12:00");
      const policy = { wardId: null, fromDay: "2024-02-01" as Day, body, replaces: 0, reason: "As published" };
      if (body) await ward.ask(endpoints.setPolicy, policy);
      await work(ward);
    } finally {
      await ward.close();
    }
  }

  /** The first day of March 2024 on which a catheter of the first is past its threshold, counted after the operation. */
  async function firstPastDay(ward: ApiWard, indication: string): Promise<number> {
    ward.at("2024-03-01T16:00");
    const stayId = await ward.admit("2024-03-01T07:00");
    await ward.insert(stayId, { in: "2024-03-01T10:00", indication });
    for (let day = 1; day <= 10; day++) {
      const states = await statesAt(ward, `2024-03-${String(day).padStart(2, "0")}T09:00`.replace("01T09", "01T17"));
      if (states.includes("past-threshold")) return day - 1;
    }
    throw new Error("it was never past the threshold");
  }

  it(titleOf(caseOf("H01")), () =>
    withPolicy(null, async (ward) => {
      const { surgery_end, now } = z.object({ surgery_end: z.string(), now: z.string() }).parse(caseOf("H01").inputs);
      ward.at("2024-03-01T16:00");
      const stayId = await ward.admit("2024-03-01T07:00");
      await ward.insert(stayId, { in: "2024-03-01T11:00" });
      expect(await statesAt(ward, surgery_end.replace("14:00", "16:30"))).toEqual([]);
      const prompted = await statesAt(ward, now);
      expect(prompted.includes("overdue")).toBe(caseOf("H01").expected.prompt);
    }),
  );

  it(titleOf(caseOf("H02")), () =>
    withPolicy(surgical, async (ward) => {
      expect(caseOf("H02").expected.recommendation).toBe("avoid catheter");
      ward.at("2024-03-01T16:00");
      const stayId = await ward.admit("2024-03-01T07:00");
      // No indication of the unit's policy covers it: that is flagged, and the record is kept all the same.
      await ward.insert(stayId, { in: "2024-03-01T10:00", indication: "other" });
      expect(await statesAt(ward, "2024-03-01T17:00")).toEqual(["indication-outside"]);
    }),
  );

  it.each([
    ["H03", "hemicolectomy", "remove on postoperative day 0 or 1", 2],
    ["H04", "abdominoperineal", "remove on postoperative day 1 to 4", 5],
  ] as const)(`%s as a policy: %s`, (id, indication, recommendation, firstDayPast) =>
    withPolicy(surgical, async (ward) => {
      expect(caseOf(id).expected.recommendation).toBe(recommendation);
      expect(await firstPastDay(ward, indication)).toBe(firstDayPast);
    }),
  );

  it(titleOf(caseOf("H05")), () =>
    withPolicy(surgical, async (ward) => {
      expect(await firstPastDay(ward, "prostate-surgery")).toBe(caseOf("H05").expected.inappropriate_if_POD_at_least);
    }),
  );

  it(titleOf(caseOf("H06")), () =>
    withPolicy({ ...surgical, thresholdDays: 13 }, async (ward) => {
      const { inputs, expected } = caseOf("H06");
      expect([inputs.intended_days, expected.class]).toEqual([
        [13, 14],
        ["short-term", "long-term"],
      ]);
      ward.at("2024-03-01T16:00");
      const stayId = await ward.admit("2024-03-01T07:00");
      await ward.insert(stayId, { in: "2024-03-01T10:00", indication: "immobilization" });
      expect(await statesAt(ward, "2024-03-13T09:00")).not.toContain("past-threshold");
      expect(await statesAt(ward, "2024-03-14T09:00")).toContain("past-threshold");
    }),
  );
});
