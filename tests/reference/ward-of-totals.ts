import { month } from "../../shared/day.ts";
import { dayOf } from "./day-text.ts";

/** Spreads three month totals over the first 28 days of January to March 2026, the same for both quantities. */
export function wardOf(manual: number[], electronic: number[]) {
  const part = (total: number, index: number) => Math.floor(total / 28) + (index < total % 28 ? 1 : 0);
  const count = (value: number) => ({ patients: value, catheters: value });
  const days = ["2026-01", "2026-02", "2026-03"].flatMap((text, at) =>
    Array.from({ length: 28 }, (_, index) => ({
      day: dayOf(`${text}-01`) + index,
      manual: count(part(manual[at] ?? Number.NaN, index)),
      electronic: count(part(electronic[at] ?? Number.NaN, index)),
    })),
  );
  return { days, lastMonth: month.parse("2026-03") };
}
