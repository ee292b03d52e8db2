import { z } from "zod";
import { findingKind } from "../case-words.ts";
import { day } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import type { ProblemCode } from "../problems.ts";
import { id, idInPath, reason, version } from "../wire.ts";

const fields = {
  day,
  time: z
    .string()
    .regex(/^([01]\d|2[0-3]):[0-5]\d$/, "write the time as HH:MM")
    .describe("HH:MM, local to the facility; left out where nobody knows the hour"),
  present: z.boolean().describe("False: looked for, and not so"),
  cellsPerMm3: z.number().min(0).max(1_000_000).describe("White blood cells per mm³, of pyuria alone"),
};

const faults: readonly ProblemCode[] = [
  "in-the-future",
  "time-unreadable",
  "time-does-not-exist",
  "outside-surveillance-days",
  "finding-contradicts",
];

const changed = z.strictObject({ findingId: id, version }).meta({ id: "FindingChanged" });

export const recordFinding = endpoint({
  method: "POST",
  path: "/patients/{patientId}/findings",
  summary: "Record what was found beside cultures and signs: evidence in urine, a death, support for organ donation",
  effect: "creates",
  permission: "record-care",
  wards: "patient",
  reply: "json",
  params: { patientId: idInPath },
  body: {
    finding: findingKind,
    day: fields.day,
    time: fields.time.optional(),
    present: fields.present.default(true),
    cellsPerMm3: fields.cellsPerMm3.optional(),
  },
  output: changed,
  errors: faults,
});

export const correctFinding = endpoint({
  method: "POST",
  path: "/findings/{findingId}/corrections",
  summary: "Correct a finding; what it said is kept",
  effect: "updates",
  permission: "record-care",
  wards: "finding",
  reply: "json",
  params: { findingId: idInPath },
  body: {
    day: fields.day.optional(),
    time: fields.time.nullable().optional(),
    present: fields.present.optional(),
    cellsPerMm3: fields.cellsPerMm3.nullable().optional(),
    reason,
  },
  output: changed,
  errors: [...faults, "entry-voided"],
});

export const voidFinding = endpoint({
  method: "POST",
  path: "/findings/{findingId}/void",
  summary: "Void a finding that was recorded in error",
  effect: "updates",
  permission: "record-care",
  wards: "finding",
  reply: "json",
  params: { findingId: idInPath },
  body: { reason },
  output: changed,
  errors: ["entry-voided"],
});
