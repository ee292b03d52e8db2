import type { StepStatus } from "../../../shared/culture-words.ts";
import type { DayNumber } from "../days/day-number.ts";
import type { Story } from "./story.ts";

/** The rules of all editions. The name of a rule's file is its id. */
export const ruleIds = [
  "after-death",
  "after-discharge",
  "abuti",
  "bloodstream-attribution",
  "catheter-eligibility",
  "catheter-seven-days",
  "date-of-event",
  "date-of-onset",
  "donor-support",
  "infection-from-day-3",
  "infection-window",
  "evidence-window",
  "location-of-attribution",
  "location-on-onset",
  "present-on-admission",
  "readmission",
  "repeat-timeframe",
  "repeat-14-days",
  "suti-1a",
  "suti-1b",
  "suti-2",
  "urine-culture",
  "urine-culture-any-organism",
  "uti-a",
  "uti-b",
] as const;
export type RuleId = (typeof ruleIds)[number];

/** Where a rule stands, and whether it was read there. */
export interface Source {
  readonly document: string;
  /** `read`: in that document, or where `readIn` says; `from memory`: remembered, not read; `our reading`: in none. */
  readonly basis: "read" | "from memory" | "our reading";
  readonly readIn?: string;
}

/** A short story of a patient, and what one step of its derivation comes to. Shown to people and run as a test. */
export interface Example {
  readonly title: string;
  readonly editionId: string;
  readonly story: Story;
  /** What the rule's step says of the first urine specimen, or of the first finding where there is none. */
  readonly status: StepStatus;
  /** A part of the step's sentence, where the example is about what it says. */
  readonly says?: string;
}

/** A rule as data: what it says, where that stands, when it was in force, and what it makes of examples. */
export interface Rule {
  readonly id: RuleId;
  readonly title: string;
  readonly says: string;
  readonly sources: readonly Source[];
  /** null: nobody is known to have ended it. */
  readonly inForce: { readonly from: DayNumber; readonly to: DayNumber | null };
  readonly examples: readonly Example[];
}

/** One line for people: the document, and what the rule rests on. */
export function sourceText({ document, basis, readIn }: Source): string {
  if (basis === "read") return readIn ? `${document} (read in ${readIn})` : document;
  return `${document} (${basis})`;
}
