import { z } from "zod";
import { day } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { id, idInPath, instant, lineText, reason } from "../wire.ts";
import { catheterState, noteState, patientState, replacedVersion, stayState, wardStayState } from "./entries.ts";

/** A hospital's own number of a patient or stay: it stands in bodies only, never in an address. */
export const hospitalNumber = lineText(100);

/** Asked for in a body, so that no identifier stands in an address or log. The view is recorded. */
export const findPatients = endpoint({
  method: "POST",
  path: "/patients/find",
  summary: "Find a patient by the hospital's number; the view is recorded",
  permission: "see-patients",
  wards: "facility",
  reply: "json",
  body: { identifier: hospitalNumber },
  output: z.strictObject({ patients: z.array(patientState) }).meta({ id: "Patients" }),
  errors: [],
});

/** A patient's record over all stays. The view is recorded. */
export const readPatient = endpoint({
  method: "GET",
  path: "/patients/{patientId}",
  summary: "Read a patient's record; the view is recorded",
  permission: "see-patients",
  wards: "patient",
  reply: "json",
  params: { patientId: idInPath },
  output: z
    .strictObject({
      patient: patientState,
      survivorId: id.describe("The record that this one was merged into, or its own number"),
      survivorIdentifier: z.string().describe("The hospital's number of that record"),
      merges: z
        .array(
          z.strictObject({
            mergeId: id,
            fromId: id,
            fromIdentifier: z.string().describe("The hospital's number of the record that was merged"),
            intoId: id.describe("The record that it was merged into: the address of the undo names it"),
            intoIdentifier: z.string(),
            mergedAt: instant,
            mergedBy: id,
          }),
        )
        .describe("The merges that stand, of this record and of those merged with it, the first one first"),
      stays: z.array(stayState),
      wardStays: z.array(wardStayState.extend({ stayId: id })),
      catheters: z.array(catheterState),
      notes: z.array(noteState),
      uncounted: z
        .array(
          z.strictObject({
            stayId: id,
            kind: z
              .enum(["no-ward", "outpatient"])
              .describe("No ward is recorded, or an unconfirmed outpatient or procedure area between inpatient wards"),
            firstDay: day,
            lastDay: day,
            days: z.int().min(1).describe("Censuses from the first to the last day"),
            lastWardId: id.nullable().describe("The inpatient ward before"),
            nextWardId: id.nullable().describe("The inpatient ward after"),
          }),
        )
        .describe("Censuses during a stay that may miss a patient-day, days in a row as one"),
      corrections: z.array(replacedVersion).describe("What this record said of birth and sex before, oldest first"),
    })
    .meta({ id: "PatientRecord" }),
  errors: [],
});

const sex = z.enum(["female", "male", "other", "unknown"]).nullable();

/** What was not known at admission, or written down wrong: rules of age ask for the day of birth. */
export const correctPatient = endpoint({
  method: "POST",
  path: "/patients/{patientId}/corrections",
  summary: "Correct a patient's day of birth or sex; what the record said is kept, and cultures are determined anew",
  effect: "creates",
  permission: "record-care",
  wards: "patient",
  reply: "json",
  params: { patientId: idInPath },
  body: {
    birthDay: day.nullable(),
    sex,
    seen: z
      .strictObject({ birthDay: day.nullable(), sex: z.string().nullable() })
      .describe("What the person saw: somebody may have corrected it since"),
    reason,
  },
  output: z.strictObject({ patientId: id }).meta({ id: "PatientCorrected" }),
  errors: ["stale-version", "in-the-future"],
});

/** Two records turn out to be one person. */
export const mergePatients = endpoint({
  method: "POST",
  path: "/patients/{patientId}/merges",
  summary: "Merge another record into this one: its days count for this patient from now on",
  effect: "creates",
  permission: "merge-patients",
  wards: "patient",
  reply: "json",
  params: { patientId: idInPath },
  body: { fromId: id.describe("The record that is merged into this one") },
  output: z.strictObject({ mergeId: id }).meta({ id: "Merged" }),
  errors: ["not-found", "same-patient", "already-merged", "stay-overlaps"],
});

/** Each record counts for itself again. */
export const unmergePatients = endpoint({
  method: "POST",
  path: "/patients/{patientId}/merges/{mergeId}/undo",
  summary: "Take a merge back",
  effect: "creates",
  permission: "merge-patients",
  wards: "patient",
  reply: "json",
  params: { patientId: idInPath, mergeId: idInPath },
  body: { reason },
  output: z.strictObject({ mergeId: id }).meta({ id: "Unmerged" }),
  errors: ["not-found"],
});
