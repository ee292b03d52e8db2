import { z } from "zod";

/** The words of a closed list in their printed order, for an enum. */
export function words<List extends Record<string, string>>(list: List): (keyof List & string)[] {
  return Object.keys(list);
}

/** A label inside a sentence: with a small first letter, unless it is an abbreviation such as OR. */
export function inSentence(label: string): string {
  return label.replace(/^[A-Z](?![A-Z])/, (letter) => letter.toLowerCase());
}

/**
 * What can drain a bladder or kidney, with the label a person reads. Whether a kind counts as a catheter-day is a rule,
 * not part of the list. Kinds: CDC Patient Safety Component Manual, chapter 7 (key terms).
 */
export const catheterKinds = {
  "indwelling-urethral": "Indwelling urethral catheter",
  suprapubic: "Suprapubic catheter",
  external: "External (condom) catheter",
  intermittent: "Intermittent (in-and-out) catheter",
  nephrostomy: "Nephrostomy tube",
  "ileal-conduit": "Ileal conduit",
} as const;
export const catheterKind = z.enum(words(catheterKinds));
export type CatheterKind = z.infer<typeof catheterKind>;

/** What a ward is for. Only inpatient wards earn patient-days and attribution. */
export const wardSettings = {
  inpatient: "Inpatient unit",
  outpatient: "Outpatient area (emergency, observation unit)",
  procedure: "Procedure area (OR, recovery, imaging)",
} as const;
export const wardSetting = z.enum(words(wardSettings));
export type WardSetting = z.infer<typeof wardSetting>;

/**
 * Why a patient was off the wards inside a stay. Procedure keeps the ward day, leave does not count; an absence
 * without a kind is unknown and is no word of this list.
 */
export const absenceKinds = {
  procedure: "Procedure, bed held",
  leave: "Leave",
  outpatient: "Outpatient or procedure area, bed not held",
} as const;
export const absenceKind = z.enum(words(absenceKinds));
export type AbsenceKind = z.infer<typeof absenceKind>;

/** The sex of a patient as it is recorded. */
export const sexes = { female: "Female", male: "Male", other: "Other", unknown: "Not known" } as const;

/** Where a patient went at the end of a stay. Common practice in American discharge records. */
export const dispositions = {
  home: "Home",
  "home-care": "Home with home health care",
  "skilled-nursing": "Skilled nursing facility",
  "nursing-home": "Nursing home or other long-term care",
  rehabilitation: "Inpatient rehabilitation",
  "long-term-acute-care": "Long-term acute care hospital",
  "other-hospital": "Another hospital",
  psychiatric: "Psychiatric hospital or unit",
  hospice: "Hospice",
  "against-advice": "Left against medical advice",
  died: "Died",
  other: "Elsewhere",
  unknown: "Not known",
} as const;

/** What a person or a machine may do in a facility. */
export const roles = {
  bedside: "Bedside (records on own units)",
  prevention: "Infection prevention (surveillance of the facility)",
  manager: "Manager (results of own units)",
  administrator: "Administrator (people, policy and feeds)",
  feed: "Feed (machine, intake only)",
} as const;
export const role = z.enum(words(roles));
export type Role = z.infer<typeof role>;
