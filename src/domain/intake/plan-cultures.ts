import type { RecordedSign } from "../cultures/sign.ts";
import type { RecordedSpecimen } from "../cultures/specimen.ts";
import type { Entry } from "../timeline/timeline.ts";
import { type LineOf, type PatientLine, placeOf, specimenKey } from "./intake-line.ts";
import { applyLine, type Plan, refuseLine } from "./plan.ts";
import { planSign } from "./plan-sign.ts";
import { planSpecimen, reportRank } from "./plan-specimen.ts";

/** An entry that lines made, without `old`, or changed. */
export interface CultureChange<T> {
  readonly old: T | null;
  readonly now: T;
}

/** The specimens and signs of a patient. */
export interface Cultures {
  readonly specimens: readonly RecordedSpecimen[];
  readonly signs: readonly RecordedSign[];
}

/** What lines made of them. */
export interface CultureChanges {
  readonly specimens: readonly CultureChange<RecordedSpecimen>[];
  readonly signs: readonly CultureChange<RecordedSign>[];
}

/**
 * Applies the lines about specimens and signs, when everything else is known of all stays: they belong to the patient.
 * Lines that were refused with their stay are left as they are.
 */
export function applyCultures(plan: Plan, lines: readonly PatientLine[]): void {
  const left = lines.filter((line) => !plan.outcomes.has(line));
  const specimens = left.filter((line) => line.file === "specimens.csv");
  specimens.sort((a, b) => a.values.collected - b.values.collected || reportRank(a.values) - reportRank(b.values));
  const groups = new Map<string, LineOf<"specimens.csv">[]>();
  for (const line of specimens) {
    const key = specimenKey(line.values);
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  for (const group of groups.values()) applySpecimen(plan, group);
  for (const line of left) if (line.file === "signs.csv") applyLine(plan, line, () => planSign(plan, line));
}

/** A specimen is stored with all of its lines or with none: two of three organisms would be another result. */
function applySpecimen(plan: Plan, lines: readonly LineOf<"specimens.csv">[]): void {
  const before = new Map(plan.cultures.specimens);
  for (const line of lines) applyLine(plan, line, () => planSpecimen(plan, line));
  const refused = lines.find((line) => plan.outcomes.get(line)?.state === "refused");
  if (!refused) return;
  plan.cultures.specimens.clear();
  for (const [id, specimen] of before) plan.cultures.specimens.set(id, specimen);
  const fault = { ...specimenRefused, other: placeOf(refused) };
  for (const line of lines) if (plan.outcomes.get(line)?.state !== "refused") refuseLine(plan, line, [fault]);
}

/** The fault of a line whose specimen has another line that was refused. */
export const specimenRefused = {
  code: "specimen-refused",
  column: null,
  detail: "Another line of its specimen was refused.",
} as const;

/** What became of the specimens and signs that were recorded before. */
export function cultureChanges({ cultures }: Plan, before: Cultures): CultureChanges {
  return {
    specimens: changed(before.specimens, cultures.specimens),
    signs: changed(before.signs, cultures.signs),
  };
}

/** However many lines spoke of an entry, it goes one version on. */
function changed<T extends Entry>(before: readonly T[], after: ReadonlyMap<number, T>): CultureChange<T>[] {
  const olds = new Map(before.map((one) => [one.id, one]));
  return [...after.values()]
    .filter((now) => olds.get(now.id) !== now)
    .map((now) => {
      const old = olds.get(now.id) ?? null;
      return { old, now: { ...now, version: (old?.version ?? 0) + 1 } };
    });
}
