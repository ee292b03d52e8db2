import { z } from "zod";
import { itemState, noteKind, reviewOutcome } from "../catheter-words.ts";
import { day } from "../day.ts";
import { insertionRecord, removalRecord } from "../records.ts";
import { absenceKind, catheterKind } from "../vocabulary.ts";
import { id, instant, version } from "../wire.ts";

/** The entries of a patient's record as they are answered. An entry that was voided stays readable and counts nowhere. */
export const entry = {
  version,
  voidReason: z.string().nullable().describe("Why the entry was voided; null while it stands"),
};

export const noHour = z
  .array(z.string())
  .optional()
  .describe("Fields whose hour is not recorded: only the day is known");

export const wardStayState = z
  .strictObject({
    wardStayId: id,
    ...entry,
    wardId: id,
    bed: z.string().nullable(),
    startAt: instant,
    endAt: instant.nullable().describe("Null while the patient is there"),
    absenceAfter: absenceKind.nullable().describe("The kind of the time off the wards that follows"),
    noHour,
  })
  .meta({ id: "WardStay" });

export const catheterState = z
  .strictObject({
    catheterId: id,
    stayId: id,
    ...entry,
    number: z.string().nullable(),
    kind: catheterKind,
    insertedAt: instant.nullable(),
    inPlaceOnArrival: z.boolean(),
    removedAt: instant.nullable(),
    removedAfterAt: instant.nullable().describe("Found out: still in place at this time"),
    removedBeforeAt: instant.nullable().describe("Found out: gone at this time"),
    lastSeenAt: instant.nullable(),
    indication: z.string().nullable(),
    sizeFr: z.number().nullable(),
    balloonMl: z.number().nullable(),
    insertionRecord: insertionRecord.nullable(),
    removalRecord: removalRecord.nullable(),
    noHour,
  })
  .meta({ id: "Catheter" });

export const noteState = z
  .strictObject({
    noteId: id,
    catheterId: id,
    ...entry,
    kind: noteKind,
    at: instant.describe("When it happened"),
    writtenAt: instant.describe("When it was written down"),
    writtenBy: id.describe("Who wrote it down"),
    outcome: reviewOutcome.nullable(),
    indication: z.string().nullable(),
    items: z.record(z.string(), itemState).nullable(),
    amountMl: z.number().nullable(),
    remark: z.string().nullable(),
  })
  .meta({ id: "CatheterNote" });

export const stayState = z
  .strictObject({
    stayId: id,
    patientId: id,
    ...entry,
    number: z.string().describe("The number of the stay in the hospital"),
    admittedAt: instant,
    dischargedAt: instant.nullable(),
    disposition: z.string().nullable(),
    noHour,
  })
  .meta({ id: "Stay" });

export const patientState = z
  .strictObject({
    patientId: id,
    identifier: z.string().describe("The patient's number in the hospital"),
    birthDay: day.nullable(),
    sex: z.string().nullable(),
  })
  .meta({ id: "Patient" });

/** What an entry said before it was changed. */
export const replacedVersion = z.strictObject({
  entry: z.string().describe("Such as catheter 12 or note 40"),
  version: z.int().describe("The version that was replaced"),
  replacedAt: instant,
  replacedBy: id,
  reason: z.string().nullable(),
  before: z.record(z.string(), z.unknown()).describe("What it said"),
});
