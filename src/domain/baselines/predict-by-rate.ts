import type { PooledBaseline } from "./baseline.ts";
import type { Predicted, PredictionStep, WardInPeriod, WardPrediction } from "./predict.ts";

/**
 * What pooled rates predict for one ward: the rate of its type (or of the ward itself) x its catheter-days, or the
 * utilization x its patient-days. Null, with the reason, where the baseline does not cover it.
 */
export function predictByRate(
  { by, rates, origin }: PooledBaseline,
  what: Predicted,
  ward: WardInPeriod,
): Omit<WardPrediction, "ward"> {
  const none = (reason: string) => ({ predicted: { value: null, reason }, steps: [] });
  const key = by === "ward" ? ward.ward : ward.wardType;
  if (key === null) return none(`Nobody has said what type of ward ${ward.ward} is.`);
  const row = rates.find((rate) => rate.key === key);
  const called = by === "ward" ? `the ward ${key}` : `wards of the type ${key}`;
  if (!row) return none(`${origin.name} does not cover ${called}.`);
  const isRate = what === "infections";
  const rate = isRate ? row.infectionsPerCatheterDay : row.utilization;
  if (rate === null) return none(`${origin.name} has no ${isRate ? "infection rate" : "utilization"} for ${called}.`);
  const days = isRate ? ward.catheterDays : ward.patientDays;
  const steps: PredictionStep[] = [
    isRate
      ? { what: `infections per 1,000 catheter-days, ${key}`, value: rate * 1_000 }
      : { what: `utilization, ${key}`, value: rate },
    { what: isRate ? "catheter-days" : "patient-days", value: days },
  ];
  return { predicted: { value: rate * days }, steps };
}
