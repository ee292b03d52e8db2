import type { DayExists } from "../counting/day-before.ts";
import type { DayNumber } from "../days/day-number.ts";
import type { Zone } from "../days/zone.ts";
import type { PolicyInForce } from "../policy/policy-in-force.ts";
import type { CountedCatheter, CountedWardStay } from "../timeline/counted-timeline.ts";
import type { CatheterNote } from "../timeline/note.ts";
import type { Catheter, Stay, WardStay } from "../timeline/timeline.ts";

/** What necessity asks of a note. */
export type NecessityNote = Pick<
  CatheterNote,
  "id" | "voidReason" | "catheterId" | "kind" | "at" | "writtenAt" | "outcome" | "indication" | "items"
>;

/** What necessity asks of a catheter. */
export type NecessityCatheter = CountedCatheter &
  Pick<Catheter, "id" | "inPlaceOnArrival" | "marks" | "lastSeenAt" | "indication" | "noted" | "insertionRecord">;

/** What necessity asks of a stay. */
export interface NecessityStay
  extends Pick<Stay, "id" | "voidReason" | "marks" | "admittedAt" | "dischargedAt" | "disposition"> {
  readonly wardStays: readonly (CountedWardStay & Pick<WardStay, "bed">)[];
  readonly catheters: readonly NecessityCatheter[];
}

/** A patient with everything recorded: every `PatientTimeline` with all notes about its catheters is one. */
export interface NecessityPatient {
  readonly patientId: number;
  readonly stays: readonly NecessityStay[];
  readonly notes: readonly NecessityNote[];
}

/** What holds in the facility. */
export interface NecessityRules {
  readonly zone: Zone;
  /** Whether the facility day has any instant; a zone can have skipped a date. */
  readonly dayExists: DayExists;
  /** Whether the ward was an inpatient ward on that facility day. */
  readonly isInpatient: (wardId: number, day: DayNumber) => boolean;
  /** The policy in force on a ward on a day. Asked often: let it remember its answers. */
  readonly policyOn: (wardId: number, day: DayNumber) => PolicyInForce;
  /** What people call the ward. */
  readonly wardName: (wardId: number) => string;
}
