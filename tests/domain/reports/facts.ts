import type { MonthFacts, WardFacts } from "../../../src/domain/reports/month-facts.ts";
import type { QualityFinding, QualityKind } from "../../../src/domain/timeline/data-quality.ts";

/** The number of a day as text. */
export const day = (text: string) => Date.parse(text) / 86_400_000;

/** A ward with figures; an inpatient ward that somebody described unless told otherwise. */
export function ward(code: string, said: Partial<WardFacts> = {}): WardFacts {
  const name = `Ward ${code}`;
  return {
    ...{ wardId: 1, code, name, inpatient: "yes", namedOnly: false, patientDays: 0, catheterDays: 0, days: [] },
    ...said,
  };
}

/** October 2026 of a fictional hospital, over and without anything in it unless told otherwise. */
export function facts(said: Partial<MonthFacts> = {}): MonthFacts {
  return {
    facility: { name: "Alder Bay Hospital", zone: "America/New_York" },
    first: day("2026-10-01"),
    last: day("2026-10-31"),
    asOf: Date.UTC(2026, 10, 3, 8),
    complete: true,
    over: true,
    census: [{ fromDay: day("2026-10-01"), time: "00:00" as MonthFacts["census"][0]["time"] }],
    censuses: Array.from({ length: 31 }, (_, i) => ({ day: day("2026-10-01") + i, at: Date.UTC(2026, 9, 1 + i, 4) })),
    wards: [],
    findings: [],
    uncounted: [],
    undescribed: { stays: 0, wardIds: [] },
    ...said,
  };
}

/** Findings of these kinds. */
export function findings(...kinds: readonly QualityKind[]): QualityFinding[] {
  return kinds.map((kind, i) => ({ kind, wardId: null, stayId: i, entry: `catheter ${i}`, start: 0, end: null }));
}
