import { z } from "zod";
import { urineFindings } from "./culture-words.ts";
import { words } from "./vocabulary.ts";

/** How far the work on a determined culture is. */
export const caseStates = {
  waiting: "Waiting for confirmation",
  changed: "Changed since confirmed",
  confirmed: "Confirmed",
  disagreed: "Confirmed with a disagreement",
  pending: "Waiting for the laboratory",
  closed: "Closed automatically",
  "out-of-scope": "Not under surveillance",
} as const;
export const caseState = z.enum(words(caseStates));
export type CaseState = z.infer<typeof caseState>;

/** The lists of determined cultures. */
export const caseLists = {
  waiting: "To review",
  pending: "Waiting for the laboratory",
  decided: "Reviewed",
  closed: "Closed automatically: no growth, or not usable",
  "out-of-scope": "Not under surveillance",
  all: "All",
} as const;
export const caseList = z.enum(words(caseLists));
export type CaseList = z.infer<typeof caseList>;

/** What a person did with a determination. No one overrules it: the count follows the determination. */
export const caseDecisions = {
  confirmation: "Confirmed",
  disagreement: "Disagreed",
  reopening: "Opened again",
} as const;
export const caseDecision = z.enum(words(caseDecisions));
export type CaseDecision = z.infer<typeof caseDecision>;

/**
 * What is found out about a patient beside cultures and signs, and decides determinations: evidence of European
 * definitions, and what excludes an event (CDC Patient Safety Component Manual, chapter 2, from memory).
 */
export const findingKinds = {
  ...urineFindings,
  death: "Death",
  "donor-support": "Support for organ donation after documented consent",
} as const;
export const findingKind = z.enum(words(findingKinds));
export type FindingKind = z.infer<typeof findingKind>;
