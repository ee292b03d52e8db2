import type { Catheter, Stay, WardStay } from "./timeline.ts";

/** What counting asks of a ward stay. */
export type CountedWardStay = Pick<WardStay, "id" | "voidReason" | "wardId" | "startAt" | "endAt" | "absenceAfter">;

/** What counting asks of a catheter. */
export type CountedCatheter = Pick<Catheter, "voidReason" | "kind" | "insertedAt" | "removedAt" | "removedAfterAt">;

/** What counting asks of a stay. */
export interface CountedStay extends Pick<Stay, "id" | "voidReason" | "admittedAt" | "dischargedAt"> {
  readonly wardStays: readonly CountedWardStay[];
  readonly catheters: readonly CountedCatheter[];
}

/**
 * What counting asks of a patient: every `PatientTimeline` is one, and one that is only counted can be read without
 * the rest.
 */
export interface CountedTimeline {
  readonly patientId: number;
  readonly stays: readonly CountedStay[];
}
