import type { Ratio } from "../counting/ratio.ts";
import { refuseUnlessAmount } from "../statistics/check-figures.ts";
import type { Baseline } from "./baseline.ts";
import { refuseFaultyBaseline } from "./baseline-faults.ts";
import { predictByModel } from "./predict-by-model.ts";
import { predictByRate } from "./predict-by-rate.ts";

/** One ward over one stretch of time, as a baseline sees it. */
export interface WardInPeriod {
  readonly ward: string;
  /** Null where nobody has said what type of ward it is. */
  readonly wardType: string | null;
  readonly catheterDays: number;
  readonly patientDays: number;
  /** What a model asks for: a category's name, or a number for terms with bands. */
  readonly factors: Readonly<Record<string, string | number>>;
}

/** What a baseline may be asked for. */
export type Predicted = "infections" | "catheter-days";

/** One step of a prediction, in the order in which it is computed: what it is, and its value. */
export interface PredictionStep {
  readonly what: string;
  readonly value: number;
}

/** What a baseline predicts for one ward, term by term; null, with the reason, where it does not cover the ward. */
export interface WardPrediction {
  readonly ward: string;
  readonly predicted: Ratio;
  readonly steps: readonly PredictionStep[];
}

/** What a baseline predicts for several wards. */
export interface Prediction {
  /** The sum over the covered wards, which is what observed numbers of those wards alone compare with. */
  readonly predicted: Ratio;
  readonly wards: readonly WardPrediction[];
  /** The wards that the baseline says nothing about; their observed numbers must be left out of a ratio. */
  readonly uncovered: readonly string[];
}

/**
 * Predicts infections or catheter-days of wards by a baseline, term by term, and adds them up. A ward that the baseline
 * does not cover has no number but a reason, and is listed. Null where it covers none of them.
 * A Problem for a baseline that cannot be used, with every fault of it, and for days that cannot be.
 * Source: indirect standardization (pooled rates); for models CDC, measure record of the SIR, and questions on analysis.
 */
export function predict(baseline: Baseline, what: Predicted, wards: readonly WardInPeriod[]): Prediction {
  refuseFaultyBaseline(baseline);
  const found = wards.map((ward): WardPrediction => {
    refuseUnlessAmount("catheterDays", ward.catheterDays);
    refuseUnlessAmount("patientDays", ward.patientDays);
    const { predicted, steps } =
      baseline.kind === "pooled" ? predictByRate(baseline, what, ward) : predictByModel(baseline, what, ward);
    return { ward: ward.ward, predicted, steps };
  });
  const covered = found.flatMap(({ predicted }) => (predicted.value === null ? [] : [predicted.value]));
  const predicted: Ratio =
    covered.length === 0
      ? { value: null, reason: `${baseline.origin.name} covers none of these wards.` }
      : { value: covered.reduce((sum, value) => sum + value, 0) };
  const uncovered = found.filter((ward) => ward.predicted.value === null).map(({ ward }) => ward);
  return { predicted, wards: found, uncovered };
}
