import { z } from "zod";
import { day, month } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { id, idInPath, reason, version } from "../wire.ts";

const count = z
  .strictObject({ day, patients: z.int(), catheters: z.int(), version, recordedBy: id })
  .meta({ id: "DailyCount" });

/** What was counted by hand on the days of a month. */
export const readDailyCounts = endpoint({
  method: "GET",
  path: "/wards/{wardId}/daily-counts/{month}",
  summary: "Read what was counted by hand in a month",
  permission: "see-counts",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath, month },
  output: z
    .strictObject({
      wardId: id,
      month,
      counts: z.array(count),
      missing: z.array(day).describe("Past days without a count"),
    })
    .meta({ id: "DailyCounts" }),
  errors: [],
});

export const recordDailyCount = endpoint({
  method: "POST",
  path: "/wards/{wardId}/daily-counts",
  summary: "Record what was counted by hand on a ward on a day",
  effect: "creates",
  permission: "count-by-hand",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath },
  body: {
    day,
    patients: z.int().min(0).max(10_000),
    catheters: z.int().min(0).max(10_000),
    replaces: z
      .int()
      .min(1)
      .nullable()
      .describe("The version of the count that this one replaces; null when there was none"),
    reason: reason.optional(),
  },
  output: z.strictObject({ wardId: id, version }).meta({ id: "DailyCountRecorded" }),
  errors: ["count-impossible", "in-the-future", "stale-version"],
});
