import { pool } from "../counting/pool.ts";
import { refuseUnlessAmount, refuseUnlessCount } from "./check-figures.ts";
import type { LimitChoice } from "./poisson-limits.ts";
import { sir } from "./sir.ts";
import type { StandardizedRatio } from "./standardized-ratio.ts";

/**
 * The SIR of several wards or months together: the sum of the observed / the sum of the predicted infections, never a
 * mean of ratios. Parts whose own SIR is withheld count like the others. No parts at all are withheld.
 * Source: Fakih et al., Infect Control Hosp Epidemiol 2019 (pooled SIR as a ratio of sums).
 */
export function pooledSir(
  parts: readonly { readonly observed: number; readonly predicted: number }[],
  limits: { readonly level: number; readonly by: LimitChoice },
): StandardizedRatio {
  for (const { observed, predicted } of parts) {
    refuseUnlessCount("observed", observed);
    refuseUnlessAmount("predicted", predicted);
  }
  return sir({ ...pool(["observed", "predicted"], parts), ...limits });
}
