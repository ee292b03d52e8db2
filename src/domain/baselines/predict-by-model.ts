import type { ModelBaseline, ModelTerm, TermCategory } from "./baseline.ts";
import type { Predicted, PredictionStep, WardInPeriod, WardPrediction } from "./predict.ts";

/**
 * What a model predicts for one ward: e^sum x catheter-days (infections), or 1 / (1 + e^-sum) x patient-days
 * (catheter-days), the sum being the intercept and the coefficient of the ward's category of each term.
 * Null, with the reason, where a factor of the ward is not known, fits no category, or the model predicts something else.
 * Source: model types read in a published measure record and baseline tables; exponential and offset from memory.
 */
export function predictByModel(
  { intercept, terms, predicts, origin }: ModelBaseline,
  what: Predicted,
  ward: WardInPeriod,
): Omit<WardPrediction, "ward"> {
  const none = (reason: string) => ({ predicted: { value: null, reason }, steps: [] });
  if (predicts !== what) return none(`${origin.name} predicts ${predicts}, not ${what}.`);
  const steps: PredictionStep[] = [{ what: "intercept", value: intercept }];
  let sum = intercept;
  for (const term of terms) {
    const factor = ward.factors[term.factor];
    if (factor === undefined)
      return none(`The ${term.factor} of ${ward.ward} is not known, which ${origin.name} asks for.`);
    const category = categoryOf(term, factor);
    if (!category) return none(`${origin.name} has no category for the ${term.factor} ${factor} (${ward.ward}).`);
    steps.push({ what: `${term.factor}: ${category.name}`, value: category.coefficient });
    sum += category.coefficient;
  }
  const isRate = what === "infections";
  const rate = isRate ? Math.exp(sum) : 1 / (1 + Math.exp(-sum));
  const days = isRate ? ward.catheterDays : ward.patientDays;
  if (!Number.isFinite(rate * days)) return none(`${origin.name} gives no finite number for ${ward.ward}.`);
  steps.push(
    {
      what: isRate ? "infections per catheter-day, e^sum" : "catheter-days per patient-day, 1 / (1 + e^-sum)",
      value: rate,
    },
    { what: isRate ? "catheter-days" : "patient-days", value: days },
  );
  return { predicted: { value: rate * days }, steps };
}

function categoryOf({ categories }: ModelTerm, factor: string | number): TermCategory | undefined {
  if (typeof factor === "string") return categories.find(({ name, band }) => band === null && name === factor);
  return categories.find(
    ({ band }) =>
      band !== null && (band.from === null || factor >= band.from) && (band.below === null || factor < band.below),
  );
}
