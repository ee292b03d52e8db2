import type { ChartInput } from "../../../shared/chart-input.ts";
import { shrinkRates } from "../statistics/shrinkage.ts";
import { absentChart } from "./absent-chart.ts";
import { type ComparisonFacts, level, per, periodText, rateUnit, totalsOf, withoutRate } from "./comparison-facts.ts";

/**
 * The wards in the order of their shrunken rates with the intervals that hold them: never by the raw rate, which puts
 * the smallest wards at both ends. Source: {@link shrinkRates}.
 */
export function orderOfWards(facts: ComparisonFacts): ChartInput {
  const head = { id: "order", title: `Shrunken CAUTI rates of wards, ${periodText(facts.months)}` };
  const sums = facts.wards.map((ward) => ({ name: ward.code, ...totalsOf(ward.months) }));
  const counted = sums.filter((ward) => withoutRate(ward) === null);
  if (counted.length < 2) return absentChart(head, "Fewer than two wards have a rate, so there is no order.");
  const found = shrinkRates(
    counted.map(({ infections, watchedDays: days }) => ({ events: infections ?? 0, days })),
    { level },
  );
  if ("value" in found) return absentChart(head, found.reason);
  const rows = counted
    .flatMap(({ name }, at) => {
      const shrunken = found.wards[at];
      if (!shrunken) return [];
      const { rate, lower, upper } = shrunken;
      return [{ name, estimate: rate * per, lower: lower * per, upper: upper * per, reason: null }];
    })
    .sort((a, b) => b.estimate - a.estimate || (a.name < b.name ? -1 : 1));
  const missing = sums.flatMap((ward) => {
    const reason = withoutRate(ward);
    return reason === null ? [] : [{ name: ward.name, estimate: null, lower: null, upper: null, reason }];
  });
  const sentence =
    "Shows each ward's rate drawn towards that of all wards, the more the fewer catheter-days it has; wards whose intervals overlap are not told apart, so this is no ranking.";
  return {
    kind: "intervals",
    input: {
      ...{ ...head, sentence, unit: rateUnit, decimals: 2, scale: "linear", reference: found.pooled * per },
      ...{ referenceName: "all wards", rows: [...rows, ...missing] },
    },
    notes:
      found.variance === 0
        ? ["The wards differ no more than chance makes them, so every one of them is given the rate of all together."]
        : [],
  };
}
