import type { FigureKey } from "../../../shared/figure-words.ts";
import type { Figure } from "../../../shared/month-report.ts";
import type { Ratio } from "../counting/ratio.ts";
import type { MonthNecessity } from "../necessity/month-necessity.ts";
import { cad } from "../statistics/cad.ts";
import { type Dwell, dwellCurve } from "../statistics/dwell-curve.ts";
import type { LimitRule } from "../statistics/poisson-limits.ts";
import { rateWithLimits } from "../statistics/rate-with-limits.ts";
import { sir } from "../statistics/sir.ts";
import { sur } from "../statistics/sur.ts";
import { countFigure, figureOf, level, limitsOf, methodOf, shareFigure, standardizedFigure } from "./figure.ts";
import { type OpenCulture, openTogether } from "./infections.ts";

/** What was counted on a ward, or on several together. */
export interface PartFacts {
  readonly patientDays: Ratio;
  readonly catheterDays: Ratio;
  readonly infections: Ratio;
  /** The days of the wards whose infections are known: what rates are taken of. */
  readonly watched: { readonly patientDays: number; readonly catheterDays: number };
  /** Observed and predicted of the wards that a baseline covers. */
  readonly infectionsPredicted: Predicted & { readonly openCultures: readonly OpenCulture[] };
  readonly catheterDaysPredicted: Predicted;
  readonly care: Readonly<Record<keyof MonthNecessity, number>>;
  /** Why there are no figures of care; null where there are. */
  readonly noCare: string | null;
  readonly absencesUnknown: number;
  readonly countsMissing: Ratio;
  /** Cultures beside the count, of all wards and of those whose infections are known. */
  readonly openCultures: readonly OpenCulture[];
  readonly openOfWatched: readonly OpenCulture[];
  readonly inserted: number;
  readonly dwells: readonly Dwell[];
  readonly open: number | null;
}

interface Predicted {
  readonly observed: number;
  readonly predicted: Ratio;
}

export interface FigureRules {
  readonly limits: LimitRule;
  readonly goal: number | null;
}

const census = "Counted at the daily census";

/** Every figure of a ward or of several together, in the order in which they are printed. */
export function partFigures(part: PartFacts, rules: FigureRules): Figure[] {
  return [...dayFigures(part), ...infectionFigures(part, rules), ...careFigures(part), ...catheterFigures(part)];
}

function dayFigures({ patientDays, catheterDays }: PartFacts): Figure[] {
  const [part, whole] = [catheterDays.value, patientDays.value];
  const counted = { counted: census, none: "There are no patient-days, so there is no utilization ratio." };
  return [
    countFigure("patient_days", patientDays, census),
    countFigure("catheter_days", catheterDays, census),
    part === null || whole === null
      ? countFigure("utilization", patientDays.value === null ? patientDays : catheterDays)
      : shareFigure("utilization", { part, whole }, counted),
  ];
}

/** Figures of infections; those that cultures could still change say of how many. */
function infectionFigures(part: PartFacts, rules: FigureRules): Figure[] {
  const count = (open: readonly OpenCulture[]) => openTogether([{ open }]).all || null;
  const [ofWatched, ofCovered] = [count(part.openOfWatched), count(part.infectionsPredicted.openCultures)];
  const hangs: Partial<Record<FigureKey, number | null>> = {
    ...{ infections: ofWatched, rate: ofWatched, population_rate: ofWatched, sir: ofCovered, cad: ofCovered },
  };
  return decidedFigures(part, rules).map((figure) =>
    figure.value === null ? figure : { ...figure, open: hangs[figure.key] ?? null },
  );
}

function decidedFigures(part: PartFacts, { limits, goal }: FigureRules): Figure[] {
  const { infections, watched, infectionsPredicted: expected, catheterDaysPredicted: used } = part;
  const rate = (key: "rate" | "population_rate", days: number, per: number, none: string): Figure => {
    if (infections.value === null) return countFigure(key, infections);
    const figures = { numerator: infections.value, denominator: days };
    if (days === 0) return figureOf(key, { ...figures, reason: none });
    const found = rateWithLimits({ events: infections.value, days, per, level, by: limits });
    return figureOf(key, {
      ...{ value: found.rate.value, ...figures, method: `Poisson, ${methodOf(found.method)}`, ...limitsOf(found) },
    });
  };
  const predicted = expected.predicted.value;
  const beside = openTogether([{ open: part.openCultures }]);
  return [
    countFigure("infections", infections, "Confirmed events by location of attribution and date of event"),
    countFigure("cultures_waiting", { value: beside.waiting }),
    countFigure("cannot_tell", { value: beside["cannot-tell"] }),
    rate("rate", watched.catheterDays, 1_000, "There are no catheter-days, so there is no rate."),
    rate("population_rate", watched.patientDays, 10_000, "There are no patient-days, so there is no rate."),
    expected.predicted.value === null
      ? countFigure("sir", expected.predicted)
      : standardizedFigure(
          "sir",
          sir({ observed: expected.observed, predicted: expected.predicted.value, level, by: limits }),
          "Observed / predicted of the wards that the baseline covers",
        ),
    cadFigure(expected.observed, predicted === null ? expected.predicted : { value: predicted }, goal),
    used.predicted.value === null
      ? countFigure("sur", used.predicted)
      : standardizedFigure(
          "sur",
          sur({ observed: used.observed, predicted: used.predicted.value, level, by: limits }),
          "Observed / predicted of the wards that the baseline covers",
        ),
  ];
}

function cadFigure(observed: number, predicted: Ratio, goal: number | null): Figure {
  if (predicted.value === null) return countFigure("cad", predicted);
  if (goal === null) return figureOf("cad", { reason: "Nobody has set a target for the SIR." });
  return figureOf("cad", {
    ...{ value: cad([{ observed, predicted: predicted.value, goal }]), numerator: observed },
    ...{ denominator: predicted.value, method: `Observed less predicted times the target of ${goal}` },
  });
}

function careFigures({ care, noCare }: PartFacts): Figure[] {
  if (noCare !== null) return careKeys.map((key) => figureOf(key, { reason: noCare }));
  return [
    shareFigure(
      "reviews_in_time",
      { part: care.reviewsInTime, whole: care.reviewsDue },
      { none: "No review was due.", counted: "By the hour that the policy gives" },
    ),
    shareFigure(
      "bundle_kept",
      { part: care.careChecksKept, whole: care.careChecks },
      { none: "Nobody made a care check.", counted: "Every item of the policy's bundle kept" },
    ),
    countFigure("days_past_threshold", { value: care.daysPastThreshold }, "By the policy in force on each day"),
    countFigure("days_without_indication", { value: care.daysWithoutIndication }, "At the daily census"),
    countFigure("days_outside_policy", { value: care.daysOutsidePolicy }, "At the daily census"),
  ];
}

const careKeys = [
  ...(["reviews_in_time", "bundle_kept", "days_past_threshold"] as const),
  ...(["days_without_indication", "days_outside_policy"] as const),
];

function catheterFigures(part: PartFacts): Figure[] {
  const { care, noCare, absencesUnknown, countsMissing, inserted, dwells, open } = part;
  const known = (value: number): Ratio => (noCare === null ? { value } : { value: null, reason: noCare });
  return [
    dwellFigure(dwells, noCare),
    countFigure(
      "insertions",
      known(inserted),
      "Inserted in the month, by the ward that had the patient then or first after",
    ),
    countFigure("days_doubtful", known(care.daysDoubtful), "At the daily census"),
    countFigure("absences_unknown", known(absencesUnknown)),
    countFigure("counts_missing", countsMissing),
    countFigure(
      "catheters_open",
      open === null ? { value: null, reason: "Counted in the current month only." } : known(open),
      "At the instant of reading",
    ),
  ];
}

function dwellFigure(dwells: readonly Dwell[], noCare: string | null): Figure {
  if (noCare !== null) return figureOf("dwell_median", { reason: noCare });
  if (dwells.length === 0) return figureOf("dwell_median", { reason: "No catheter was inserted in the month." });
  const { median, removed } = dwellCurve(dwells);
  return figureOf("dwell_median", {
    ...{ value: median.time.value, numerator: removed, denominator: dwells.length },
    method: "Kaplan-Meier of catheters inserted in the month, watched to its end; removals of all those watched",
    reason: median.time.value === null ? median.time.reason : null,
    ...limitsOf(median),
  });
}
