import { z } from "zod";
import { caseList } from "../case-words.ts";
import { day, month } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { id, idInPath, reason, version } from "../wire.ts";
import { caseDecided, caseDetail, caseInList } from "./case-entries.ts";

/** Urine cultures with what they were determined to be, for whoever works on them. */
export const listCases = endpoint({
  method: "GET",
  path: "/cases",
  summary: "List determined cultures: those that wait for somebody, or that are settled; the view is recorded",
  permission: "judge-cases",
  wards: "facility",
  reply: "json",
  heavy: true,
  query: {
    list: caseList.default("waiting"),
    from: day
      .optional()
      .describe("The first day of collection; left out: all that wait, and the last 92 days of what is settled"),
    month: month
      .optional()
      .describe("Only those whose event, or where there is none whose collection, is in this month"),
  },
  output: z
    .strictObject({
      list: caseList,
      caution: z.string(),
      knownThrough: day.describe("The day up to which the record was read"),
      cases: z.array(caseInList).describe("Oldest first where somebody is waited for, otherwise newest first"),
      counts: z
        .record(caseList, z.int())
        .describe("How many there are in each list; of what is settled, as many as the days listed hold"),
    })
    .meta({ id: "Cases" }),
  errors: [],
});

/** One culture with everything that its case page shows. The number of a case is that of its specimen or finding. */
export const readCase = endpoint({
  method: "GET",
  path: "/cases/{caseId}",
  summary: "Read a determined culture with its derivation, its history and the days around it; the view is recorded",
  permission: "judge-cases",
  wards: "case",
  reply: "json",
  params: { caseId: idInPath },
  output: caseDetail,
  errors: [],
});

/** Somebody looked at the derivation and holds it to be right. */
export const confirmCase = endpoint({
  method: "POST",
  path: "/cases/{caseId}/confirmation",
  summary: "Confirm a determination as it was seen",
  effect: "updates",
  permission: "judge-cases",
  wards: "case",
  reply: "json",
  params: { caseId: idInPath },
  body: { remark: reason.optional().describe("What is worth keeping with the confirmation") },
  output: caseDecided,
  errors: ["nothing-to-decide"],
});

/** Somebody does not agree. It is printed beside the determination, and the count follows the determination. */
export const disagreeWithCase = endpoint({
  method: "POST",
  path: "/cases/{caseId}/disagreement",
  summary: "Confirm a determination with a disagreement, which is printed beside it and changes no count",
  effect: "updates",
  permission: "judge-cases",
  wards: "case",
  reply: "json",
  params: { caseId: idInPath },
  body: { reason },
  output: caseDecided,
  errors: ["nothing-to-decide"],
});

/** A decision is taken back, with the reason kept. */
export const reopenCase = endpoint({
  method: "POST",
  path: "/cases/{caseId}/reopening",
  summary: "Take back a confirmation or a disagreement: the culture waits again",
  effect: "updates",
  permission: "judge-cases",
  wards: "case",
  reply: "json",
  params: { caseId: idInPath },
  body: { reason },
  output: caseDecided,
  errors: ["not-decided"],
});

/** A watched ward and month in which nothing was found. */
export const recordNoneFound = endpoint({
  method: "POST",
  path: "/none-found",
  summary: "Confirm that a ward had no event in a month; it is withdrawn by itself when one appears",
  effect: "creates",
  permission: "judge-cases",
  wards: "ward",
  reply: "json",
  body: { wardId: id, month },
  output: z.strictObject({ noneFoundId: id, version }).meta({ id: "NoneFoundRecorded" }),
  errors: ["ward-not-watched", "month-not-over", "event-found", "none-found-already"],
});

export const withdrawNoneFound = endpoint({
  method: "POST",
  path: "/wards/{wardId}/none-found/{noneFoundId}/withdrawal",
  summary: "Withdraw the confirmation that a ward had no event in a month",
  effect: "updates",
  permission: "judge-cases",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath, noneFoundId: idInPath },
  body: { reason },
  output: z.strictObject({ noneFoundId: id, version }).meta({ id: "NoneFoundWithdrawn" }),
  errors: [],
});
