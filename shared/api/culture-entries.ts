import { z } from "zod";
import { findingKind } from "../case-words.ts";
import {
  countKind,
  organismGroup,
  signFinding,
  signName,
  specimenKind,
  specimenMethod,
  specimenStatus,
} from "../culture-words.ts";
import { day } from "../day.ts";
import { id, instant } from "../wire.ts";
import { entry, noHour } from "./entries.ts";

/** Who wrote an entry down, and when. */
const written = {
  writtenAt: instant.describe("When it was written down"),
  writtenBy: id.describe("Who wrote it down"),
};

const organismState = z
  .strictObject({
    organismId: id,
    name: z.string().describe("As the laboratory wrote it"),
    group: organismGroup.nullable().describe("Null: the name is not on the list and nobody chose a group"),
    isOnList: z.boolean(),
    isCommensal: z.boolean().describe("A common commensal of the skin; it matters in blood alone"),
    count: z.string().nullable().describe("As the laboratory wrote it"),
    countKind: countKind.describe("How the count is read"),
  })
  .meta({ id: "Organism" });

/** What of a specimen decides nothing until somebody says what was meant. */
export const setAside = z
  .array(z.string())
  .describe("Pointers to names without a group and to counts that cannot be read: kept, and decided by a person");

export const specimenState = z
  .strictObject({
    specimenId: id,
    patientId: id,
    ...entry,
    kind: specimenKind,
    collectedAt: instant,
    method: specimenMethod,
    status: specimenStatus,
    number: z.string().nullable().describe("The laboratory's number"),
    organisms: z
      .array(organismState)
      .describe("No growth: an organism of that group, or none at all in a final report of an import"),
    setAside,
    noHour,
    ...written,
  })
  .meta({ id: "Specimen" });

export const signState = z
  .strictObject({
    signId: id,
    patientId: id,
    ...entry,
    sign: signName,
    day,
    at: instant.nullable().describe("Null: nobody knows the hour"),
    finding: signFinding,
    temperature: z.string().nullable().describe("As it was measured, such as 38.4 °C or 101.1 °F"),
    otherCause: z.boolean().describe("Another cause of it was recognized"),
    lastDay: day.nullable().describe("Of a chart review (not-documented): its last day; null: the day alone"),
    readAt: instant.nullable().describe("Of a chart review (not-documented): when the chart was read"),
    ...written,
  })
  .meta({ id: "Sign" });

export const findingState = z
  .strictObject({
    findingId: id,
    patientId: id,
    ...entry,
    finding: findingKind,
    day,
    at: instant.nullable().describe("Null: nobody knows the hour"),
    present: z.boolean().describe("False: looked for, and not so"),
    cellsPerMm3: z.number().nullable().describe("White blood cells per mm³, of pyuria alone"),
    ...written,
  })
  .meta({ id: "Finding" });
