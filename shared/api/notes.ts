import { z } from "zod";
import { itemState, reviewOutcome } from "../catheter-words.ts";
import { endpoint } from "../endpoint.ts";
import { policyCode } from "../policy.ts";
import type { ProblemCode } from "../problems.ts";
import { remark } from "../records.ts";
import { id, idInPath, reason, timeText, version } from "../wire.ts";
import { confirm } from "./catheters.ts";

const changed = z.strictObject({ noteId: id, version }).meta({ id: "NoteChanged" });

const faults: readonly ProblemCode[] = [
  "entry-voided",
  "in-the-future",
  "time-unreadable",
  "time-does-not-exist",
  "not-in-place",
];

const items = z
  .record(policyCode, itemState)
  .describe("By item of the policy's bundle; what was not looked at is left out");
const amountMl = z.number().describe("Milliliters");
const common = {
  effect: "creates",
  permission: "record-care",
  wards: "catheter",
  reply: "json",
  params: { catheterId: idInPath },
  output: changed,
} as const;

/** Is it still needed? Several a day are allowed: one that asks the prescriber is answered by a later one. */
export const reviewCatheter = endpoint({
  ...common,
  method: "POST",
  path: "/catheters/{catheterId}/reviews",
  summary: "Record the review of whether a catheter is still needed",
  body: {
    at: timeText,
    outcome: reviewOutcome,
    indication: policyCode.optional().describe("Why it is kept; needed when the outcome is keep"),
    remark: remark.optional(),
  },
  errors: [...faults, "indication-missing", "indication-unknown"],
});

/** Somebody saw it in place. */
export const confirmCatheter = endpoint({
  ...common,
  method: "POST",
  path: "/catheters/{catheterId}/confirmations",
  summary: "Record that a catheter was seen in place",
  body: { at: timeText },
  errors: faults,
});

export const recordCareCheck = endpoint({
  ...common,
  method: "POST",
  path: "/catheters/{catheterId}/care-checks",
  summary: "Record a care check: the items of the maintenance bundle",
  body: { at: timeText, items, remark: remark.optional() },
  errors: [...faults, "item-unknown"],
});

export const recordUrineOutput = endpoint({
  ...common,
  method: "POST",
  path: "/catheters/{catheterId}/urine-outputs",
  summary: "Record an amount of urine",
  body: { at: timeText, amountMl, confirm: confirm.optional() },
  errors: [...faults, "out-of-bounds", "unusual-value"],
});

export const correctNote = endpoint({
  method: "POST",
  path: "/notes/{noteId}/corrections",
  summary: "Correct a note; what it said is kept",
  effect: "updates",
  permission: "record-care",
  wards: "note",
  reply: "json",
  params: { noteId: idInPath },
  body: {
    at: timeText.optional(),
    outcome: reviewOutcome.optional(),
    indication: policyCode.nullable().optional(),
    items: items.optional(),
    amountMl: amountMl.optional(),
    remark: remark.nullable().optional(),
    confirm: confirm.optional(),
    reason,
  },
  output: changed,
  errors: [
    ...faults,
    "indication-missing",
    "indication-unknown",
    "item-unknown",
    "out-of-bounds",
    "unusual-value",
    "field-of-another-note",
  ],
});

export const voidNote = endpoint({
  method: "POST",
  path: "/notes/{noteId}/void",
  summary: "Void a note that was recorded in error",
  effect: "updates",
  permission: "record-care",
  wards: "note",
  reply: "json",
  params: { noteId: idInPath },
  body: { reason },
  output: changed,
  errors: ["entry-voided"],
});
