import type { ChartInput } from "../../../shared/chart-input.ts";
import { type Shrinkage, shrinkRates } from "../statistics/shrinkage.ts";
import { absentChart } from "./absent-chart.ts";
import {
  type ComparisonFacts,
  hollowNotes,
  level,
  openPart,
  per,
  periodText,
  rateUnit,
  totalsOf,
  withoutRate,
} from "./comparison-facts.ts";

/**
 * The wards in the order of their shrunken rates with the intervals that hold them: never by the raw rate, which puts
 * the smallest wards at both ends. Where chance explains all differences every ward has the same rate, and one sentence
 * says so in place of the chart. Source: {@link shrinkRates}.
 */
export function orderOfWards(facts: ComparisonFacts): ChartInput {
  const title = `CAUTI rates of units adjusted for small numbers (shrinkage estimate), ${periodText(facts.months)}`;
  const head = { id: "order", title };
  const sums = facts.wards.map((ward) => ({ name: ward.code, ...totalsOf(ward.months) }));
  const counted = sums.filter((ward) => withoutRate(ward) === null);
  if (counted.length < 2) return absentChart(head, "Fewer than two units have a rate, so there is no order.");
  const found = shrinkRates(
    counted.map(({ infections, watchedDays: days }) => ({ events: infections ?? 0, days })),
    { level },
  );
  if ("value" in found) return absentChart(head, found.reason);
  if (found.variance === 0) return absentChart(head, sharedRate(found, counted.length));
  const rows = counted
    .flatMap((ward, at) => {
      const { name } = ward;
      const shrunken = found.wards[at];
      if (!shrunken) return [];
      const { rate, lower, upper } = shrunken;
      return [{ name, estimate: rate * per, lower: lower * per, upper: upper * per, reason: null, ...openPart(ward) }];
    })
    .sort((a, b) => b.estimate - a.estimate || (a.name < b.name ? -1 : 1));
  const missing = sums.flatMap((ward) => {
    const reason = withoutRate(ward);
    return reason === null ? [] : [{ name: ward.name, estimate: null, lower: null, upper: null, reason }];
  });
  return {
    kind: "intervals",
    input: {
      ...{ ...head, sentence, unit: rateUnit, decimals: 2, scale: "linear", reference: found.pooled * per },
      ...{ referenceName: "all units", rows: [...rows, ...missing] },
    },
    notes: hollowNotes(rows),
  };
}

const sentence =
  "Shows each unit's rate moved toward the rate of all units, more so where it has few catheter-days. Units whose intervals overlap are not ranked.";

function sharedRate({ pooled, wards: [shared] }: Shrinkage, count: number): string {
  const figure = (value = 0) => (value * per).toFixed(2);
  const limits = `${level * 100}% interval ${figure(shared?.lower)} to ${figure(shared?.upper)}`;
  return `The ${count} units differ no more than chance alone makes them, so all have one rate: ${figure(pooled)} ${rateUnit} (${limits}).`;
}
