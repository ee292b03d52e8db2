import { z } from "zod";
import { organismGroup, specimenKind, specimenMethod, specimenStatus } from "../culture-words.ts";
import { endpoint } from "../endpoint.ts";
import type { ProblemCode } from "../problems.ts";
import { id, idInPath, lineText, reason, timeOrDayText, timeText, version } from "../wire.ts";
import { findingState, setAside, signState, specimenState } from "./culture-entries.ts";
import { replacedVersion } from "./entries.ts";

const specimenStored = z.strictObject({ specimenId: id, version, setAside }).meta({ id: "SpecimenStored" });

const number = lineText(100).describe("The laboratory's number of the specimen");
const organisms = z
  .array(
    z.strictObject({
      name: lineText(200).describe("As the laboratory wrote it"),
      group: organismGroup.optional().describe("Only for a name that is not on the list of organisms"),
      count: lineText(60).optional().describe("As the laboratory wrote it: >100000, 10^5, 50,000-100,000"),
    }),
  )
  .max(100)
  .describe("One for each organism of the report, or one named No growth; none: no report yet");

const specimenFaults: readonly ProblemCode[] = [
  "in-the-future",
  "time-unreadable",
  "time-does-not-exist",
  "outside-surveillance-days",
  "result-contradicts",
  "too-many-organisms",
  "organism-group-contradicts",
  "organism-missing",
];

export const recordSpecimen = endpoint({
  method: "POST",
  path: "/patients/{patientId}/specimens",
  summary: "Record a specimen of urine or blood, with what the laboratory found so far",
  effect: "creates",
  permission: "record-care",
  wards: "patient",
  reply: "json",
  params: { patientId: idInPath },
  body: {
    kind: specimenKind,
    collectedAt: timeText,
    method: specimenMethod.default("culture"),
    status: specimenStatus,
    number: number.optional(),
    organisms: organisms.default([]),
  },
  output: specimenStored,
  errors: specimenFaults,
});

/** A further report, a result that was withdrawn, a slip. */
export const correctSpecimen = endpoint({
  method: "POST",
  path: "/specimens/{specimenId}/corrections",
  summary: "Correct a specimen or record its further report; what it said is kept",
  effect: "updates",
  permission: "record-care",
  wards: "specimen",
  reply: "json",
  params: { specimenId: idInPath },
  body: {
    kind: specimenKind.optional(),
    collectedAt: timeOrDayText.optional(),
    method: specimenMethod.optional(),
    status: specimenStatus.optional(),
    number: number.nullable().optional(),
    organisms: organisms.optional(),
    reason,
  },
  output: specimenStored,
  errors: [...specimenFaults, "entry-voided"],
});

export const voidSpecimen = endpoint({
  method: "POST",
  path: "/specimens/{specimenId}/void",
  summary: "Void a specimen that was recorded in error",
  effect: "updates",
  permission: "record-care",
  wards: "specimen",
  reply: "json",
  params: { specimenId: idInPath },
  body: { reason },
  output: z.strictObject({ specimenId: id, version }).meta({ id: "SpecimenVoided" }),
  errors: ["entry-voided"],
});

export const readCultures = endpoint({
  method: "GET",
  path: "/patients/{patientId}/cultures",
  summary: "Read a patient's specimens and signs with their corrections; the view is recorded",
  permission: "see-patients",
  wards: "patient",
  reply: "json",
  params: { patientId: idInPath },
  output: z
    .strictObject({
      patientId: id.describe("The surviving record"),
      specimens: z.array(specimenState).describe("In the order of collection"),
      signs: z.array(signState).describe("In the order of days"),
      findings: z.array(findingState).describe("What was found beside them, in the order of days"),
      corrections: z.array(replacedVersion).describe("What was changed, oldest first"),
    })
    .meta({ id: "Cultures" }),
  errors: [],
});
