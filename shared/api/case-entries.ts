import { z } from "zod";
import { auditAction } from "../audit-words.ts";
import { caseDecision, caseState } from "../case-words.ts";
import { determinationOutcome } from "../culture-words.ts";
import { day } from "../day.ts";
import { catheterKind, wardSetting } from "../vocabulary.ts";
import { id, instant, version } from "../wire.ts";
import { findingState, signState, specimenState } from "./culture-entries.ts";
import { determination } from "./determination-entries.ts";

const outcome = determinationOutcome
  .nullable()
  .describe("Null: there is nothing to determine any more, because the specimen or finding was voided");

/** What was determined before, and why it was determined anew. */
const change = z
  .strictObject({
    before: z.string().describe("The determination that somebody decided about, in one line"),
    after: z.string().describe("What it is now"),
    cause: auditAction.describe("What was done to the record, and changed it"),
    reason: z.string().nullable().describe("The reason that was given for it"),
    at: instant,
    by: id,
  })
  .meta({ id: "DeterminationChange" });

/** One day of the patient, as far as a glance needs it. */
const glanceDay = z.strictObject({
  day,
  wardId: id.nullable().describe("Where the patient was last on this day; null: on no ward"),
  catheter: z.boolean().describe("An indwelling urethral catheter was in place for some part of it"),
  signs: z.array(z.string()).describe("Signs that were present, in words"),
  urine: z.int().describe("Urine specimens collected"),
  blood: z.int(),
});

/** What every answer says of a case. */
const aboutCase = {
  caseId: id.describe("The number of its urine specimen, or of its finding in urine"),
  subject: z.strictObject({ kind: z.enum(["specimen", "finding"]), id, day }),
  patientId: id.describe("The surviving record"),
  identifier: z.string().describe("The patient's number in the hospital"),
  version: version.describe("Send it as If-Match with a decision; it changes with the determination too"),
  state: caseState,
  outcome,
  summary: z.string().describe("The determination in one line"),
  wardId: id.nullable().describe("Of an event its location of attribution, otherwise the ward at collection"),
  ageDays: z.int().describe("Days since collection"),
  changed: change.nullable().describe("What changed since somebody decided; null when nothing did"),
};

export const caseInList = z
  .strictObject({
    ...aboutCase,
    isCauti: z.boolean(),
    criterion: z.string().nullable(),
    dateOfEvent: day.nullable(),
    isDischarged: z.boolean(),
    grew: z.array(z.string()).describe("What grew, with counts, as the laboratory wrote it"),
    lookUp: z.array(z.string()).describe("Of what cannot be told: what to look up"),
    hinges: z
      .array(z.strictObject({ point: z.string(), otherAnswer: z.string() }))
      .describe("Open points of which another reading gives another answer"),
    hasFewTemperatures: z
      .boolean()
      .describe("It rests on temperatures of fewer than half of the days in which a fever would count"),
    closedBecause: z.string().nullable().describe("Why it closed automatically, as a sentence; null when it did not"),
    glance: z.array(glanceDay).describe("14 days: from 10 days before the day of collection to 3 days after it"),
  })
  .meta({ id: "CaseInList" });

/** Days from first to last, both included; null: not known, or it lasts. */
const span = { first: day.nullable(), last: day.nullable() };

/** The patient's days around a culture, for a drawing. All records are whole, also where they reach beyond. */
const picture = z
  .strictObject({
    first: day,
    last: day,
    stays: z.array(z.strictObject({ stayId: id, ...span })),
    wards: z
      .array(z.strictObject({ stayId: id, wardId: id, setting: wardSetting.nullable(), ...span }))
      .describe("In the order of the patient's way"),
    catheters: z.array(
      z.strictObject({
        catheterId: id,
        stayId: id,
        kind: catheterKind,
        ...span,
        latestLast: day.nullable().describe("Found removed: the last day on which it may still have been in place"),
      }),
    ),
    specimens: z
      .array(specimenState.extend({ day, outcome: determinationOutcome.nullable() }))
      .describe("Urine and blood, in the order of collection"),
    signs: z.array(signState),
    findings: z.array(findingState),
  })
  .meta({ id: "CasePicture" });

export const caseDetail = z
  .strictObject({
    ...aboutCase,
    caution: z.string(),
    ageMonths: z
      .int()
      .nullable()
      .describe("Completed months of age on the date of event, or of collection where there is none; null: not known"),
    knownThrough: day.describe("The day up to which the record was read"),
    determination: determination.nullable().describe("With every step; wards are named by their codes"),
    decisions: z
      .array(
        z.strictObject({ kind: caseDecision, summary: z.string(), reason: z.string().nullable(), at: instant, by: id }),
      )
      .describe("What people decided, oldest first, each about the determination as it was then"),
    history: z
      .array(
        z.strictObject({
          number: z.int(),
          summary: z.string(),
          editionId: z.string(),
          isChange: z.boolean().describe("Something that is reported became other; else only its derivation did"),
          cause: auditAction,
          reason: z.string().nullable(),
          at: instant,
          by: id,
        }),
      )
      .describe("What it was determined to be, oldest first; the last one is in force"),
    picture,
  })
  .meta({ id: "Case" });

export const caseDecided = z.strictObject({ caseId: id, version, state: caseState }).meta({ id: "CaseDecided" });
