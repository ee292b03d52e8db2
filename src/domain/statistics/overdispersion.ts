import type { Ratio } from "../counting/ratio.ts";
import { refuseUnlessAmount, refuseUnlessPositive } from "./check-figures.ts";
import { normalUpperQuantile } from "./normal.ts";
import { quantileOfList } from "./quantile-of-list.ts";

/** The scale on which wards are compared: square roots make the spread of Poisson rates even. */
export type FunnelScale = "square root" | "none";

/** How much more wards differ than chance alone would make them. */
export interface Overdispersion {
  /** Each ward's distance from the target in standard errors, in the order given. */
  readonly z: readonly number[];
  /** The same with the outermost tenths pulled in, so that a few outliers do not widen the funnel. */
  readonly winsorized: readonly number[];
  /** The mean square of the winsorized distances: about 1 where chance alone is at work. */
  readonly phi: number;
  /** phi without winsorizing. */
  readonly phiOfAll: number;
  /** Above this phi the wards differ by more than chance: 1 + 2 sqrt(2 / wards). */
  readonly phiThreshold: number;
  /** The variance between wards on the scale used, 0 where chance explains all. */
  readonly tauSquared: number;
}

/** A funnel's wards, target and scale. */
export interface FunnelWards {
  readonly units: readonly { readonly observed: number; readonly denominator: number }[];
  readonly target: number;
  readonly scale: FunnelScale;
}

/**
 * Winsorized overdispersion of the rates of several wards around a target: z scores whose lowest and highest tenths
 * are set to the tenth's bound, phi as their mean square, and the variance between wards by moments.
 * Null, with the reason, for fewer than two wards. A Problem for figures that cannot be.
 * Source: Spiegelhalter, Stat Med 2005;24:1185-1202. Error: below 1e-12, relative.
 */
export function overdispersion({
  units,
  target,
  scale,
}: FunnelWards): Overdispersion | Extract<Ratio, { value: null }> {
  refuseUnlessPositive("target", target);
  if (units.length < 2) return { value: null, reason: "Fewer than two wards cannot differ from each other." };
  const errors = units.map(({ denominator }) => standardError(target, denominator, scale));
  const z = units.map(({ observed, denominator }, at) => {
    refuseUnlessAmount("observed", observed);
    return (onScale(observed / denominator, scale) - onScale(target, scale)) / (errors[at] ?? 1);
  });
  const [low, high] = [quantileOfList(z, 0.1), quantileOfList(z, 0.9)];
  const winsorized = z.map((value) => Math.min(high, Math.max(low, value)));
  const phi = meanSquare(winsorized);
  const weights = errors.map((error) => 1 / (error * error));
  const sum = weights.reduce((all, weight) => all + weight, 0);
  const squares = weights.reduce((all, weight) => all + weight * weight, 0);
  const excess = units.length * phi - (units.length - 1);
  return {
    ...{ z, winsorized, phi, phiOfAll: meanSquare(z) },
    phiThreshold: 1 + 2 * Math.sqrt(2 / units.length),
    tauSquared: Math.max(0, excess / (sum - squares / sum)),
  };
}

/**
 * The limit of a funnel that allows for overdispersion: by a factor sqrt(phi) on the standard error (never below 1), or
 * by adding the variance between wards to its square. Back on the scale of rates, never below 0.
 * Source: Spiegelhalter, Stat Med 2005;24:1185-1202. Error: below 1e-12, relative.
 */
export function overdispersedLimit(input: {
  target: number;
  denominator: number;
  probability: number;
  scale: FunnelScale;
  found: Pick<Overdispersion, "phi" | "tauSquared">;
  model: "multiplicative" | "additive";
}): number {
  const { target, denominator, probability, scale, found, model } = input;
  const error = standardError(target, denominator, scale);
  const widened =
    model === "additive" ? Math.sqrt(error * error + found.tauSquared) : error * Math.sqrt(Math.max(1, found.phi));
  const limit = Math.max(0, onScale(target, scale) - normalUpperQuantile(probability) * widened);
  return scale === "square root" ? limit * limit : limit;
}

function standardError(target: number, denominator: number, scale: FunnelScale): number {
  refuseUnlessPositive("target", target);
  refuseUnlessPositive("denominator", denominator);
  return scale === "square root" ? 1 / (2 * Math.sqrt(denominator)) : Math.sqrt(target / denominator);
}

function onScale(rate: number, scale: FunnelScale): number {
  return scale === "square root" ? Math.sqrt(rate) : rate;
}

function meanSquare(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value * value, 0) / values.length;
}
