import type { ChartInput } from "../../../shared/chart-input.ts";
import { exactFunnelLimit } from "../statistics/funnel-limits.ts";
import { overdispersion } from "../statistics/overdispersion.ts";
import { absentChart } from "./absent-chart.ts";
import { type ComparisonFacts, per, periodText, rateUnit, totalsOf, withoutRate } from "./comparison-facts.ts";

/** The probabilities below the lower limits of the funnel: 95 % and 99.8 % lie between the pairs. */
const tails = { inner: 0.025, outer: 0.001 } as const;

interface Counted {
  readonly name: string;
  readonly infections: number;
  readonly days: number;
}

/**
 * The funnel of wards around their pooled rate, with exact limits interpolated between counts.
 * Source: Spiegelhalter, Stat Med 2005;24:1185-1202.
 */
export function funnelOfWards(facts: ComparisonFacts): ChartInput {
  const head = { id: "funnel", title: `CAUTI rates of wards by their catheter-days, ${periodText(facts.months)}` };
  const sums = facts.wards.map((ward) => ({ name: ward.code, ...totalsOf(ward.months) }));
  const counted = sums.flatMap(({ name, infections, watchedDays: days }) =>
    infections === null || days === 0 ? [] : [{ name, infections, days }],
  );
  const [infections, days] = [sum(counted, (ward) => ward.infections), sum(counted, (ward) => ward.days)];
  if (counted.length < 2) return absentChart(head, "Fewer than two wards have a rate, so there is nothing to compare.");
  if (infections === 0) return absentChart(head, "No CAUTI was counted on these wards, so no limits can be drawn.");
  const target = infections / days;
  const [least, most] = [Math.min(...counted.map((ward) => ward.days)), Math.max(...counted.map((ward) => ward.days))];
  const wards = sums.map((ward) => {
    const reason = withoutRate(ward);
    const rate = reason === null ? ((ward.infections ?? 0) / ward.watchedDays) * per : null;
    const position = rate === null ? ("inside" as const) : positionOf(rate, ward.watchedDays, target);
    return { name: ward.name, days: ward.watchedDays, rate, position, reason };
  });
  const sentence =
    "Shows which wards lie outside what chance alone would make of the pooled rate; it neither ranks the wards between the limits nor says why one lies outside.";
  return {
    kind: "funnel",
    input: {
      ...{ ...head, sentence, unit: rateUnit, daysUnit: "catheter-days", target: target * per },
      ...{ targetName: "pooled rate", wards },
      inner: { name: "95%", places: line({ target, least, most }, tails.inner) },
      outer: { name: "99.8%", places: line({ target, least, most }, tails.outer) },
    },
    notes: [...outsideNotes(wards), ...spreadNotes(counted, target)],
  };
}

interface Funnel {
  readonly target: number;
  /** Days of the smallest and of the largest ward. */
  readonly least: number;
  readonly most: number;
}

function sum<T>(list: readonly T[], pick: (one: T) => number): number {
  return list.reduce((all, one) => all + pick(one), 0);
}

function limitsAt(target: number, days: number, tail: number): { lower: number; upper: number } {
  const at = (probability: number) => exactFunnelLimit({ target, denominator: days, probability }).interpolated * per;
  return { lower: at(tail), upper: at(1 - tail) };
}

/**
 * Sixty places, nearer to each other where the funnel bends. They begin near the smallest ward: limits of fewer days are so
 * wide that they would flatten all the others.
 */
function line({ target, least, most }: Funnel, tail: number): { days: number; lower: number; upper: number }[] {
  const count = 60;
  const first = Math.max(1, least * 0.8, most / 60);
  return Array.from({ length: count }, (_, at) => {
    const days = first * (most / first) ** (at / (count - 1));
    return { days, ...limitsAt(target, days, tail) };
  });
}

function positionOf(rate: number, days: number, target: number): "inside" | "outside-inner" | "outside-outer" {
  const isOutside = (tail: number) => {
    const { lower, upper } = limitsAt(target, days, tail);
    return rate < lower || rate > upper;
  };
  if (isOutside(tails.outer)) return "outside-outer";
  return isOutside(tails.inner) ? "outside-inner" : "inside";
}

function outsideNotes(wards: readonly { readonly position: string; readonly rate: number | null }[]): string[] {
  const rated = wards.filter(({ rate }) => rate !== null);
  const outside = rated.filter(({ position }) => position !== "inside").length;
  const expected = (rated.length * 2 * tails.inner).toFixed(1);
  const many = outside === 0 ? "No ward lies" : outside === 1 ? "1 ward lies" : `${outside} wards lie`;
  return [`${many} outside the 95% limits; of ${rated.length} wards about ${expected} would by chance alone.`];
}

function spreadNotes(counted: readonly Counted[], target: number): string[] {
  const units = counted.map(({ infections, days }) => ({ observed: infections, denominator: days }));
  const found = overdispersion({ units, target, scale: "square root" });
  if ("value" in found || found.phi <= found.phiThreshold) return [];
  return [
    `The wards differ from each other by more than chance would make them (winsorized overdispersion ${found.phi.toFixed(2)}, usual up to ${found.phiThreshold.toFixed(2)}): they may not be of like kind, so a place outside the limits says less here.`,
  ];
}
