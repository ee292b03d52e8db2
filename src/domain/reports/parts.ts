import type { Baseline } from "../baselines/baseline.ts";
import { isNational, nonDefaultReading } from "../baselines/is-national.ts";
import { type Predicted, predict, type WardInPeriod, type WardPrediction } from "../baselines/predict.ts";
import { pool } from "../counting/pool.ts";
import type { Ratio } from "../counting/ratio.ts";
import type { MonthNecessity } from "../necessity/month-necessity.ts";
import type { WardCare } from "./care.ts";
import type { FigureFacts, WardCatheters, WardInMonth } from "./figure-facts.ts";
import { areAllRejected } from "./missing-lines.ts";
import type { WardFacts } from "./month-facts.ts";
import type { PartFacts } from "./part-figures.ts";

/** What a baseline says of a ward, as a report shows it. */
interface PredictionShown {
  value: number | null;
  reason: string | null;
  steps: { what: string; value: number }[];
}

/** A ward with all that its figures are made of. */
export interface WardPart extends WardFacts {
  readonly type: string | null;
  readonly edition: string | null;
  readonly nonDefault: readonly string[];
  readonly catheters: WardCatheters;
  readonly predictions: { infections: PredictionShown; catheterDays: PredictionShown };
  readonly part: PartFacts;
}

const noCatheters: WardCatheters = { inserted: [], dwells: [], open: 0 };
const notCounted = "The setting of this unit is not recorded, so its days are not counted.";
const notInpatient = "The ward was not a ward for inpatients.";
const nobodyCounts = "Nobody counts here by hand.";

const allRejected: Ratio = { value: null, reason: "Every line of a catheter was rejected, so none is counted." };

/** What the figures of each ward and of all wards together are made of. */
export function partsOf(facts: FigureFacts): { wards: WardPart[]; total: PartFacts } {
  const wards = facts.days.wards.map((ward) => wardPart(ward, facts));
  // Some of these patient-days belong to no ward that can be named.
  const absencesUnknown = facts.days.uncounted.filter(({ kind }) => kind === "no-ward").length;
  return { wards, total: { ...together(wards.map(({ part }) => part)), absencesUnknown } };
}

function wardPart(ward: WardFacts, { wards, care, comparison }: FigureFacts): WardPart {
  const said = wards.find(({ wardId }) => wardId === ward.wardId);
  const ofCare = care.wards.find(({ wardId }) => wardId === ward.wardId);
  const isCounted = ward.inpatient !== "unknown";
  const counted = (value: number): Ratio => (isCounted ? { value } : { value: null, reason: notCounted });
  const catheters = said?.catheters ?? noCatheters;
  const infections = isCounted ? (said?.infections ?? unknownInfections) : counted(0);
  const shown = {
    infections: prediction(comparison.infections?.baseline ?? null, "infections", { ward, said }),
    catheterDays: prediction(comparison.catheterDays?.baseline ?? null, "catheter-days", { ward, said }),
  };
  const { patientDays, catheterDays } = ward;
  const noCatheterKnown = catheterDays === 0 && ward.missing !== undefined && areAllRejected(ward.missing.catheters);
  const observed = infections.value ?? 0;
  const openCultures = said?.openCultures ?? [];
  const openOfWatched = infections.value === null ? [] : openCultures;
  const predicted = infections.value === null ? infections : ratioOf(shown.infections);
  return {
    ...ward,
    ...{
      type: said?.type ?? null,
      edition: said?.edition ?? null,
      nonDefault: said?.nonDefault ?? [],
      catheters,
      predictions: shown,
    },
    part: {
      ...{
        patientDays: counted(patientDays),
        catheterDays: noCatheterKnown ? allRejected : counted(catheterDays),
        infections,
      },
      watched: infections.value === null ? { patientDays: 0, catheterDays: 0 } : { patientDays, catheterDays },
      infectionsPredicted: { observed, predicted, openCultures: openOfWatched },
      catheterDaysPredicted: { observed: catheterDays, predicted: ratioOf(shown.catheterDays) },
      ...careOf(ofCare, isCounted ? notInpatient : notCounted),
      ...{ openCultures, openOfWatched },
      ...{ inserted: catheters.inserted.length, dwells: catheters.dwells, open: catheters.open },
    },
  };
}

const unknownInfections: Ratio = { value: null, reason: "Not watched for infections in this month." };

function careOf(ward: WardCare | undefined, noCare: string) {
  const missing = ward?.manualCountsMissing ?? null;
  const entries = Object.entries(ward?.necessity ?? {}) as [keyof MonthNecessity, readonly unknown[]][];
  return {
    care: Object.fromEntries(entries.map(([name, rows]) => [name, rows.length])) as PartFacts["care"],
    noCare: ward ? null : noCare,
    absencesUnknown: ward?.absencesUnknown ?? 0,
    countsMissing: missing === null ? { value: null, reason: nobodyCounts } : { value: missing },
  };
}

function prediction(
  baseline: Baseline | null,
  what: Predicted,
  { ward, said }: { ward: WardFacts; said: WardInMonth | undefined },
): PredictionShown {
  if (baseline === null) return { value: null, reason: "No baseline is set for this month.", steps: [] };
  if (ward.inpatient === "unknown") return { value: null, reason: notCounted, steps: [] };
  if (what === "infections" && (said?.nonDefault ?? []).length > 0 && isNational(baseline))
    return { value: null, reason: nonDefaultReading, steps: [] };
  const { patientDays, catheterDays, code } = ward;
  const asked: WardInPeriod = {
    ...{ ward: code, wardType: said?.type ?? null, patientDays, catheterDays, factors: said?.factors ?? {} },
  };
  const [found] = predict(baseline, what, [asked]).wards as [WardPrediction];
  const { predicted } = found;
  return {
    value: predicted.value,
    reason: predicted.value === null ? predicted.reason : null,
    steps: [...found.steps],
  };
}

function ratioOf({ value, reason }: PredictionShown): Ratio {
  return value === null ? { value: null, reason: reason ?? "Nothing is predicted." } : { value };
}

/** Wards together: sums of what is known, and the first reason where nothing is. */
function together(parts: readonly PartFacts[]): PartFacts {
  const withCare = parts.filter(({ noCare }) => noCare === null);
  const names = Object.keys(withCare[0]?.care ?? {}) as (keyof MonthNecessity)[];
  const none = parts.length === 0 ? "No ward is counted." : (parts[0]?.noCare ?? null);
  return {
    patientDays: sumOf(parts.map(({ patientDays }) => patientDays)),
    catheterDays: sumOf(parts.map(({ catheterDays }) => catheterDays)),
    infections: sumOf(parts.map(({ infections }) => infections)),
    watched: pool(
      ["patientDays", "catheterDays"],
      parts.map(({ watched }) => watched),
    ),
    infectionsPredicted: {
      ...covered(parts.map(({ infectionsPredicted }) => infectionsPredicted)),
      openCultures: parts.flatMap(({ infectionsPredicted: { predicted, openCultures } }) =>
        predicted.value === null ? [] : openCultures,
      ),
    },
    catheterDaysPredicted: covered(parts.map(({ catheterDaysPredicted }) => catheterDaysPredicted)),
    care: pool(
      names,
      withCare.map(({ care }) => care),
    ) as PartFacts["care"],
    noCare: withCare.length > 0 ? null : none,
    absencesUnknown: withCare.reduce((sum, part) => sum + part.absencesUnknown, 0),
    countsMissing: sumOf(parts.map(({ countsMissing }) => countsMissing)),
    openCultures: parts.flatMap((part) => part.openCultures),
    openOfWatched: parts.flatMap((part) => part.openOfWatched),
    inserted: parts.reduce((sum, part) => sum + part.inserted, 0),
    dwells: parts.flatMap(({ dwells }) => dwells),
    open: parts.reduce<number | null>((sum, { open }) => (sum === null || open === null ? null : sum + open), 0),
  };
}

/** The sum of what is known; when nothing is, the reason that all share, or that there are several. */
function sumOf(list: readonly Ratio[]): Ratio {
  const known = list.flatMap(({ value }) => (value === null ? [] : [value]));
  if (known.length > 0) return { value: known.reduce((sum, value) => sum + value, 0) };
  const reasons = new Set(list.flatMap((one) => (one.value === null ? [one.reason] : [])));
  const [shared = "No ward is counted."] = reasons;
  return { value: null, reason: reasons.size > 1 ? "No ward has it, for reasons that stand with each." : shared };
}

/** Observed and predicted of the wards for which both are known. */
function covered(list: readonly PartFacts["catheterDaysPredicted"][]): PartFacts["catheterDaysPredicted"] {
  const known = list.filter(({ predicted }) => predicted.value !== null);
  return {
    observed: known.reduce((sum, { observed }) => sum + observed, 0),
    predicted: sumOf(list.map(({ predicted }) => predicted)),
  };
}
