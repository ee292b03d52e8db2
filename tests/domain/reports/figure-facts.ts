import { defaultLimits } from "../../../shared/month-report.ts";
import type { ModelBaseline, PooledBaseline } from "../../../src/domain/baselines/baseline.ts";
import type { MonthNecessity } from "../../../src/domain/necessity/month-necessity.ts";
import type { WardCare } from "../../../src/domain/reports/care.ts";
import type { FigureFacts, MonthComparison, WardInMonth } from "../../../src/domain/reports/figure-facts.ts";
import { facts, ward } from "./facts.ts";

/** A ward as a test tells it: what is left out was counted and is nothing. */
export interface ToldWard
  extends Partial<Omit<WardInMonth, "wardId" | "catheters">>,
    Partial<WardInMonth["catheters"]> {
  readonly days?: readonly [patientDays: number, catheterDays: number];
  readonly care?: Partial<Record<keyof MonthNecessity, number>> | null;
  readonly inpatient?: "yes" | "partly" | "none" | "unknown";
  readonly countsMissing?: number;
}

const names = [
  ...["reviewsDue", "reviewsInTime", "reviewsLate", "reviewsMissed", "reviewsOverdue", "daysPastThreshold"],
  ...["daysWithoutIndication", "daysOutsidePolicy", "daysDoubtful", "careChecks", "careChecksKept"],
  ...["careChecksBroken", "careChecksIncomplete"],
] as (keyof MonthNecessity)[];

/** Facts of October 2026 about wards by their codes. */
export function figureFacts(
  told: Readonly<Record<string, ToldWard>>,
  comparison: Partial<MonthComparison> = {},
): FigureFacts {
  const list = Object.entries(told).map(([code, one], i) => ({ code, one, wardId: i + 1 }));
  const days = facts({
    wards: list.map(({ code, wardId, one }) => {
      const [patientDays, catheterDays] = one.days ?? [0, 0];
      return ward(code, { wardId, patientDays, catheterDays, inpatient: one.inpatient ?? "yes" });
    }),
  });
  const { facility, first, last, asOf } = days;
  return {
    days,
    care: { facility, first, last, asOf, wards: list.flatMap(({ code, wardId, one }) => careOf(code, wardId, one)) },
    wards: list.map(({ wardId, one }) => ({
      ...{ wardId, type: one.type ?? null, edition: one.edition ?? "us-2024", factors: one.factors ?? {} },
      nonDefault: one.nonDefault ?? [],
      infections: one.infections ?? { value: 0 },
      openCultures: one.openCultures ?? [],
      catheters: {
        inserted: one.inserted ?? [],
        dwells: one.dwells ?? [],
        open: one.open === undefined ? 0 : one.open,
      },
    })),
    comparison: { infections: null, catheterDays: null, goal: null, limits: defaultLimits, ...comparison },
  };
}

function careOf(code: string, wardId: number, { care, days, countsMissing }: ToldWard): WardCare[] {
  if (care === null) return [];
  const rows = (count: number) => Array.from({ length: count }, (_, i) => ({ catheterId: i + 1, day: 20_000 + i }));
  return [
    {
      ...{ wardId, code, name: `Ward ${code}`, catheterDays: days?.[1] ?? 0, absencesUnknown: 0 },
      ...{ manualCountsMissing: countsMissing ?? null, manualCounts: [] },
      necessity: Object.fromEntries(names.map((name) => [name, rows(care?.[name] ?? 0)])) as unknown as MonthNecessity,
    },
  ];
}

const origin = {
  ...{ id: "1", name: "Alder Bay region", source: "Invented for this test", year: "2025", edition: "1" },
  ...{ definition: "Invented", population: "Invented hospitals" },
};

/** Three infections in 1,000 catheter-days, and 0.4 catheter-days a patient-day, on medical wards. */
export const pooled: PooledBaseline = {
  ...{ kind: "pooled", origin, by: "ward-type" },
  rates: [{ key: "medical", infectionsPerCatheterDay: 0.003, utilization: 0.4, note: null }],
};

/** A model that asks for the number of beds. */
export const model: ModelBaseline = {
  ...{ kind: "model", origin: { ...origin, name: "Alder Bay model" }, predicts: "infections", intercept: -6 },
  terms: [
    {
      factor: "beds",
      categories: [
        { name: "under 20", band: { from: null, below: 20 }, coefficient: 0, standardError: null },
        { name: "20 and more", band: { from: 20, below: null }, coefficient: 0.5, standardError: 0.1 },
      ],
    },
  ],
};
