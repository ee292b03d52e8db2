import type { Ratio } from "../counting/ratio.ts";
import { refuseUnlessAmount, refuseUnlessCount, refuseUnlessLevel } from "./check-figures.ts";
import { gammaQuantile } from "./gamma-quantile.ts";

/** A ward's events over its days, or over its predicted infections. */
export interface WardCount {
  readonly events: number;
  readonly days: number;
}

/** A ward's rate drawn towards that of all wards, with the interval that holds it with the level's probability. */
export interface ShrunkenRate {
  readonly rate: number;
  readonly lower: number;
  readonly upper: number;
  /** How much of it is the ward's own rate, from 0 (all pool) to 1. */
  readonly ownWeight: number;
}

/** Shrunken rates of wards, per day. */
export interface Shrinkage {
  /** All events / all days. */
  readonly pooled: number;
  /** The variance of the true rates between wards, 0 where chance explains all. */
  readonly variance: number;
  /** In the order given; a ward without days has the pooled rate's place in the distribution of wards. */
  readonly wards: readonly ShrunkenRate[];
}

/**
 * Gamma-Poisson (empirical Bayes) shrinkage: true rates of wards are taken to follow a gamma distribution with the pooled
 * rate as mean and the variance found by moments; each ward's rate is then the mean of what its own count leaves of that
 * distribution, so it lies between its own and the pooled rate, the nearer to the pool the fewer its days.
 * The variance: sum of days (rate - pooled)^2 / all days - pooled / mean days, never below 0. The intervals take the
 * pooled rate and the variance for known, so they are somewhat narrow for few wards (common practice).
 * Where wards differ so strongly that the distribution is all skew, a ward without events can have its upper limit below
 * its mean. Special cases: where chance explains all differences the wards share the pooled rate and the interval of its own count;
 * without any days, or without any event, nothing but the reason. A Problem for figures that cannot be.
 * Source: Marshall, J R Stat Soc C 1991;40:283-294 (from memory). Error: below 1e-11, relative.
 */
export function shrinkRates(
  wards: readonly WardCount[],
  { level }: { level: number },
): Shrinkage | Extract<Ratio, { value: null }> {
  refuseUnlessLevel(level);
  let [events, days] = [0, 0];
  for (const ward of wards) {
    refuseUnlessCount("events", ward.events);
    refuseUnlessAmount("days", ward.days);
    events += ward.events;
    days += ward.days;
  }
  if (days === 0) return { value: null, reason: "There are no days, so there are no rates." };
  if (events === 0) return { value: null, reason: "There are no events, so there is nothing to order the wards by." };
  const pooled = events / days;
  const variance = varianceBetween(wards, pooled, days);
  if (variance === 0) {
    const shared = { ...posterior({ shape: events, per: days }, level), ownWeight: 0 };
    return { pooled, variance, wards: wards.map(() => shared) };
  }
  const per = pooled / variance;
  return {
    ...{ pooled, variance },
    wards: wards.map((ward) => ({
      ...posterior({ shape: pooled * per + ward.events, per: per + ward.days }, level),
      ownWeight: ward.days / (per + ward.days),
    })),
  };
}

function varianceBetween(wards: readonly WardCount[], pooled: number, days: number): number {
  const counted = wards.filter((ward) => ward.days > 0);
  const spread = counted.reduce((sum, ward) => sum + ward.days * (ward.events / ward.days - pooled) ** 2, 0) / days;
  return Math.max(0, spread - pooled / (days / counted.length));
}

function posterior({ shape, per }: { shape: number; per: number }, level: number) {
  const tail = (1 - level) / 2;
  return {
    rate: shape / per,
    lower: gammaQuantile(shape, tail, "below") / per,
    upper: gammaQuantile(shape, tail, "above") / per,
  };
}
