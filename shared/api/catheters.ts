import { z } from "zod";
import { day } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { policyCode } from "../policy.ts";
import type { ProblemCode } from "../problems.ts";
import { insertionRecord, removalRecord } from "../records.ts";
import { catheterKind } from "../vocabulary.ts";
import { id, idInPath, instant, lineText, reason, timeOrDayText, timeText, version } from "../wire.ts";
import { catheterState, noteState, replacedVersion } from "./entries.ts";

const changed = z.strictObject({ catheterId: id, version }).meta({ id: "CatheterChanged" });

const faults: readonly ProblemCode[] = [
  "entry-voided",
  "in-the-future",
  "time-unreadable",
  "time-does-not-exist",
  "outside-stay",
  "removal-before-insertion",
  "removal-unclear",
  "seen-after-removal",
  "seen-before-insertion",
  "end-before-start",
  "arrival-contradicts",
  "insertion-unknown",
  "out-of-bounds",
  "unusual-value",
];

/** Values that are outside the usual and right all the same: their pointers. */
export const confirm = z
  .array(z.string().max(100))
  .max(30)
  .describe("Pointers of unusual values that somebody has checked and that are right");

const sizeFr = z.number().describe("French: a third of a millimeter each");
const balloonMl = z.number().describe("Milliliters in the balloon");
const number = lineText(100).describe("The number that another system gave the catheter");

/** A catheter was put in. What the policy does not require may stay unrecorded. */
export const insertCatheter = endpoint({
  method: "POST",
  path: "/stays/{stayId}/catheters",
  summary: "Record the insertion of a catheter",
  effect: "creates",
  permission: "record-care",
  wards: "stay",
  reply: "json",
  params: { stayId: idInPath },
  body: {
    kind: catheterKind.default("indwelling-urethral"),
    insertedAt: timeText,
    indication: policyCode.optional(),
    sizeFr: sizeFr.optional(),
    balloonMl: balloonMl.optional(),
    number: number.optional(),
    record: insertionRecord.optional(),
    confirm: confirm.optional(),
  },
  output: changed,
  errors: [...faults, "indication-unknown", "record-incomplete"],
});

/** A catheter that was in when the patient came, found by somebody: three fields. */
export const recordCatheterOnArrival = endpoint({
  method: "POST",
  path: "/stays/{stayId}/catheters/on-arrival",
  summary: "Record a catheter found in place on arrival",
  effect: "creates",
  permission: "record-care",
  wards: "stay",
  reply: "json",
  params: { stayId: idInPath },
  body: {
    kind: catheterKind.default("indwelling-urethral"),
    foundAt: timeText.describe("When somebody saw it"),
    indication: policyCode.optional(),
  },
  output: changed,
  errors: [...faults, "indication-unknown"],
});

const catheterDay = z
  .strictObject({
    day,
    wardId: id.nullable().describe("The ward that owes the day's review; null when none does"),
    eligibilityDay: z.int().nullable(),
    review: z.enum(["not-due", "due", "asked", "done", "late", "overdue", "missed"]),
    dueAt: instant.nullable(),
  })
  .meta({ id: "CatheterStoryDay" });

/** A catheter with everything that was written about it. The view is recorded. */
export const readCatheter = endpoint({
  method: "GET",
  path: "/catheters/{catheterId}",
  summary: "Read a catheter with its notes and its corrections; the view is recorded",
  permission: "see-patients",
  wards: "catheter",
  reply: "json",
  params: { catheterId: idInPath },
  output: catheterState
    .extend({
      patientId: id.describe("The surviving record that holds its days"),
      identifier: z.string().describe("The patient's number in the hospital"),
      wards: z
        .array(z.strictObject({ wardId: id, startAt: instant, endAt: instant.nullable() }))
        .describe("Where it was in place, in order"),
      days: z.array(catheterDay).describe("The facility days on which it was in place, the last 400 of them"),
      daysLeftOut: z.int().describe("Earlier days that are not listed"),
      notes: z.array(noteState),
      corrections: z.array(replacedVersion).describe("What was changed, oldest first"),
    })
    .meta({ id: "CatheterStory" }),
  errors: [],
});

/** The catheter is out: at a time, or found out between two. */
export const removeCatheter = endpoint({
  method: "POST",
  path: "/catheters/{catheterId}/removal",
  summary: "Record the removal of a catheter",
  effect: "updates",
  permission: "record-care",
  wards: "catheter",
  reply: "json",
  params: { catheterId: idInPath },
  body: {
    removedAt: timeText.optional(),
    removedAfterAt: timeText.optional().describe("Found out: it was still in place then"),
    removedBeforeAt: timeText.optional().describe("Found out: it was gone then"),
    record: removalRecord.optional(),
    confirm: confirm.optional(),
  },
  output: changed,
  errors: [...faults, "already-removed"],
});

export const correctCatheter = endpoint({
  method: "POST",
  path: "/catheters/{catheterId}/corrections",
  summary: "Correct what was said of a catheter; what it said is kept",
  effect: "updates",
  permission: "record-care",
  wards: "catheter",
  reply: "json",
  params: { catheterId: idInPath },
  body: {
    kind: catheterKind.optional(),
    number: number.nullable().optional(),
    insertedAt: timeOrDayText.nullable().optional(),
    inPlaceOnArrival: z.boolean().optional(),
    removedAt: timeOrDayText.nullable().optional(),
    removedAfterAt: timeText.nullable().optional(),
    removedBeforeAt: timeText.nullable().optional(),
    lastSeenAt: timeOrDayText.nullable().optional(),
    indication: policyCode.nullable().optional(),
    sizeFr: sizeFr.nullable().optional(),
    balloonMl: balloonMl.nullable().optional(),
    insertionRecord: insertionRecord.nullable().optional(),
    removalRecord: removalRecord.nullable().optional(),
    confirm: confirm.optional(),
    reason,
  },
  output: changed,
  errors: [...faults, "indication-unknown"],
});

export const voidCatheter = endpoint({
  method: "POST",
  path: "/catheters/{catheterId}/void",
  summary: "Void a catheter that was recorded in error",
  effect: "updates",
  permission: "record-care",
  wards: "catheter",
  reply: "json",
  params: { catheterId: idInPath },
  body: { reason },
  output: changed,
  errors: ["entry-voided"],
});
