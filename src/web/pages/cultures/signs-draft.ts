import type { recordSigns } from "../../../../shared/api/signs.ts";
import { type SignFinding, type SignName, signName, type TemperatureUnit } from "../../../../shared/culture-words.ts";
import type { InputOf } from "../../../../shared/endpoint.ts";
import { dayTyped } from "../../parts/form/as-typed.ts";

/** What was found of one sign; null: nobody looked. */
export interface SignDraft {
  readonly finding: SignFinding | null;
  readonly time: string;
  readonly temperature: string;
  readonly unit: TemperatureUnit;
  readonly otherCause: boolean;
}

/** What was written down of a day so far. */
export interface SignsDraft {
  readonly day: string;
  readonly signs: Readonly<Partial<Record<SignName, SignDraft>>>;
}

/** Signs of infants up to one year; the others hold at any age. */
export const infantSigns: readonly SignName[] = ["apnea", "bradycardia", "lethargy", "vomiting"];
/** Signs of criteria of bloodstream infection; they decide nothing about urine. */
export const bloodSigns: readonly SignName[] = ["chills", "hypotension"];
/** Signs of which another recognized cause matters nowhere: those that are starred in no criterion, and those of blood. */
export const withoutCause: readonly SignName[] = ["temperature", "urgency", "frequency", "dysuria", ...bloodSigns];
/** The order in which signs are asked for. */
export const adultSigns: readonly SignName[] = signName.options.filter(
  (one) => !infantSigns.includes(one) && !bloodSigns.includes(one),
);

export const noSign: SignDraft = { finding: null, time: "", temperature: "", unit: "C", otherCause: false };

/** The signs that were looked for, in the order in which they are sent. */
export function saidSigns({ signs }: SignsDraft): SignName[] {
  return [...adultSigns, ...infantSigns, ...bloodSigns].filter((name) => (signs[name]?.finding ?? null) !== null);
}

/** What is sent of a day. */
export function signsInput(draft: SignsDraft): Omit<InputOf<typeof recordSigns>, "patientId"> {
  return {
    day: dayTyped(draft.day),
    signs: saidSigns(draft).map((sign) => {
      const { finding, time, temperature, unit, otherCause } = draft.signs[sign] ?? noSign;
      const isThere = finding === "present";
      return {
        sign,
        finding: finding ?? "not-recorded",
        ...(time.trim() === "" ? {} : { time: time.trim() }),
        ...(sign === "temperature" && isThere ? { temperature: measured(temperature, unit) } : {}),
        ...(isThere && otherCause ? { otherCause } : {}),
      };
    }),
  };
}

/** A temperature as it is sent: in the unit that was written, or else in the one that was chosen. */
export function measured(temperature: string, unit: TemperatureUnit): string {
  const typed = temperature.trim();
  return /[cf]$/i.test(typed) ? typed : `${typed} °${unit}`;
}
