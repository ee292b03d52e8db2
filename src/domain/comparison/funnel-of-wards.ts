import type { ChartInput } from "../../../shared/chart-input.ts";
import { chanceOutside } from "../statistics/chance-outside.ts";
import { exactFunnelLimit } from "../statistics/funnel-limits.ts";
import { overdispersion } from "../statistics/overdispersion.ts";
import { absentChart } from "./absent-chart.ts";
import {
  type ComparisonFacts,
  hollowNotes,
  openPart,
  per,
  periodText,
  rateUnit,
  totalsOf,
  withoutRate,
} from "./comparison-facts.ts";

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
  const head = { id: "funnel", title: `CAUTI rates of units by their catheter-days, ${periodText(facts.months)}` };
  const sums = facts.wards.map((ward) => ({ name: ward.code, ...totalsOf(ward.months) }));
  const counted = sums.flatMap(({ name, infections, watchedDays: days }) =>
    infections === null || days === 0 ? [] : [{ name, infections, days }],
  );
  const [infections, days] = [sum(counted, (ward) => ward.infections), sum(counted, (ward) => ward.days)];
  if (counted.length < 2) return absentChart(head, "Fewer than two units have a rate, so there is nothing to compare.");
  if (infections === 0) return absentChart(head, "No CAUTI was counted on these units, so no limits can be drawn.");
  const target = infections / days;
  const wards = sums.map((ward) => ({
    ...{ name: ward.name, events: ward.infections, days: ward.watchedDays },
    ...placed(ward, target),
    ...{ reason: withoutRate(ward), ...openPart(ward) },
  }));
  const sentence =
    "Shows which units are outside the limits of chance around the pooled rate. It does not rank units or explain why one is outside.";
  const axis = [Math.min(...counted.map((ward) => ward.days)), 1.1 * Math.max(...counted.map((ward) => ward.days))];
  const line = (tail: number) => daysAlong(axis).map((at) => ({ days: at, ...limitsAt(target, at, tail) }));
  return {
    kind: "funnel",
    input: {
      ...{ ...head, sentence, unit: rateUnit, daysUnit: "catheter-days", eventsUnit: "CAUTIs" },
      ...{ target: target * per, targetName: "pooled rate", wards },
      inner: { name: "95%", places: line(tails.inner) },
      outer: { name: "99.8%", places: line(tails.outer) },
    },
    notes: [
      countsNote,
      ...outsideNotes(wards, counted, target),
      ...spreadNotes(counted, target),
      ...hollowNotes(wards),
    ],
  };
}

const countsNote = "Beside each unit: its CAUTIs / catheter-days under surveillance.";

function sum<T>(list: readonly T[], pick: (one: T) => number): number {
  return list.reduce((all, one) => all + pick(one), 0);
}

function limitsAt(target: number, days: number, tail: number): { lower: number; upper: number } {
  const at = (probability: number) => exactFunnelLimit({ target, denominator: days, probability }).interpolated * per;
  return { lower: at(tail), upper: at(1 - tail) };
}

/** Sixty places from the first to the last, both included, nearer to each other where the funnel bends. */
function daysAlong([first = 1, last = 1]: readonly number[]): number[] {
  const count = 60;
  return Array.from({ length: count }, (_, at) =>
    at === count - 1 ? last : first * (last / first) ** (at / (count - 1)),
  );
}

function placed(ward: Parameters<typeof withoutRate>[0], target: number) {
  if (withoutRate(ward) !== null) return { rate: null, lower: null, upper: null, position: "inside" as const };
  const rate = ((ward.infections ?? 0) / ward.watchedDays) * per;
  const [inner, outer] = [tails.inner, tails.outer].map((tail) => limitsAt(target, ward.watchedDays, tail));
  const isOutside = (limits: typeof inner) => limits !== undefined && (rate < limits.lower || rate > limits.upper);
  const position = isOutside(outer) ? "outside-outer" : isOutside(inner) ? "outside-inner" : "inside";
  return { rate, lower: inner?.lower ?? null, upper: inner?.upper ?? null, position } as const;
}

function outsideNotes(
  wards: readonly { readonly position: string }[],
  counted: readonly Counted[],
  target: number,
): string[] {
  const outside = wards.filter(({ position }) => position !== "inside").length;
  const expected = sum(counted, ({ days }) => chanceOutside({ target, denominator: days, tail: tails.inner }));
  const found = outside === 0 ? "No unit is" : outside === 1 ? "1 unit is" : `${outside} units are`;
  return [
    `${found} outside the 95% limits; chance alone puts about ${expected.toFixed(1)} of ${counted.length} there.`,
  ];
}

function spreadNotes(counted: readonly Counted[], target: number): string[] {
  const units = counted.map(({ infections, days }) => ({ observed: infections, denominator: days }));
  const found = overdispersion({ units, target, scale: "square root" });
  if ("value" in found || found.phi <= found.phiThreshold) return [];
  const [phi, usual] = [found.phi.toFixed(2), found.phiThreshold.toFixed(2)];
  return [
    `The units differ more than chance alone makes them (winsorized overdispersion ${phi}, usual up to ${usual}).`,
    "The units may not be comparable, so being outside the limits means less here.",
  ];
}
