import type { ChartInput } from "../../../shared/chart-input.ts";
import { notFinalWords } from "../../../shared/figure-words.ts";
import { gChart } from "../statistics/g-chart.ts";
import { type ChartPoint, type RunSignal, runSignals } from "../statistics/run-rules.ts";
import { uChart } from "../statistics/u-chart.ts";
import { absentChart } from "./absent-chart.ts";
import {
  type ComparedMonth,
  type ComparisonFacts,
  hollowNotes,
  openPart,
  per,
  periodText,
  rateUnit,
  totalsOf,
} from "./comparison-facts.ts";
import { gapsBetween } from "./gaps-between.ts";

/** Three standard errors, as exact limits that leave the same probabilities outside. */
const sigmas = 3;

const whose = ({ chosen }: ComparisonFacts) => (chosen ? chosen.code : "all wards together");

/** The monthly rates of the chosen ward, or of all wards together, around their own mean. */
export function monthlyControl(facts: ComparisonFacts): ChartInput {
  const head = { id: "months", title: `CAUTI rate by month of ${whose(facts)}` };
  const wards = facts.chosen ? [facts.chosen] : facts.wards;
  const sums = facts.months.map((_, at) =>
    totalsOf(wards.flatMap(({ months }): ComparedMonth[] => months.slice(at, at + 1))),
  );
  const watched = sums.filter(({ infections }) => infections !== null);
  if (watched.length === 0) return absentChart(head, "No month was watched, so no infections were counted.");
  const { center, points } = uChart({
    periods: sums.map(({ infections, watchedDays }) => ({ events: infections ?? 0, days: watchedDays })),
    sigmas,
  });
  if (center.value === null) return absentChart(head, center.reason);
  const at = center.value;
  const useful = points.flatMap(({ rate, exactLower, exactUpper }, place) =>
    rate.value === null ? [] : [{ place, value: rate.value, center: at, lower: exactLower, upper: exactUpper }],
  );
  const signals = runSignals(useful);
  const signalAt = markedPlaces(signals, useful);
  const scaled = (value: number | null) => (value === null ? null : value * per);
  const sentence =
    "Shows which months chance alone would rarely give around this mean; it does not say why, and a month between its limits is no proof that all is well.";
  return {
    kind: "control",
    input: {
      ...{ ...head, sentence, unit: rateUnit, pointsAre: "month", decimals: 2 },
      ...{ center: at * per, centerName: "mean rate" },
      points: points.map(({ rate, exactLower, exactUpper }, place) => ({
        ...{ label: facts.months[place] ?? "", value: scaled(rate.value) },
        ...{ lower: scaled(exactLower), upper: scaled(exactUpper), signal: signalAt.get(place) ?? null },
        reason: sums[place]?.infections === null ? "not watched" : rate.value === null ? rate.reason : null,
        ...openPart({ open: sums[place]?.open ?? 0 }),
      })),
    },
    notes: [...signals.map(({ sentence: found }) => found), ...hollowNotes(sums.map(openPart))],
  };
}

/** The catheter-days between the infections of the chosen ward, or of all wards together. */
export function gapControl(facts: ComparisonFacts): ChartInput {
  const head = { id: "gaps", title: `Catheter-days between CAUTIs of ${whose(facts)}, ${periodText(facts.months)}` };
  const { gaps, since } = gapsBetween(facts.chosen ? [facts.chosen] : facts.wards);
  const found = gChart(gaps);
  if ("value" in found) return absentChart(head, found.reason);
  const { lower, upper, median } = found;
  const series = gaps.map((value, place) => ({ place, value, center: median, lower, upper }));
  const signals = runSignals(series);
  const signalAt = markedPlaces(signals, series);
  const sentence =
    "Shows how many catheter-days passed from one infection to the next: long gaps are good news; a short gap alone says little, because chance makes many.";
  return {
    kind: "control",
    input: {
      ...{ ...head, sentence, unit: "catheter-days between CAUTIs", pointsAre: "CAUTI, in order", decimals: 0 },
      ...{ center: median, centerName: "median" },
      points: gaps.map((value, place) => ({
        ...{ label: `${place + 2}`, value, lower, upper, signal: signalAt.get(place) ?? null, reason: null },
      })),
    },
    notes: [
      ...openNotes(facts),
      ...(since === null
        ? []
        : [
            `Since the last CAUTI ${since.toLocaleString("en-US")} catheter-days have passed so far; they are no gap yet.`,
          ]),
      ...signals.map(({ sentence: words }) => words),
    ],
  };
}

/** A culture that becomes a CAUTI divides one of the gaps, and no one knows which. */
function openNotes({ chosen, wards }: ComparisonFacts): string[] {
  const { open } = totalsOf((chosen ? [chosen] : wards).flatMap(({ months }) => months));
  return open === 0 ? [] : [`The gaps are ${notFinalWords(open)}.`];
}

/** What the rules found, by the place of the point in the chart: outside its limits before part of a run. */
function markedPlaces(
  signals: readonly RunSignal[],
  points: readonly (ChartPoint & { readonly place: number })[],
): Map<number, "outside" | "run"> {
  const marked = new Map<number, "outside" | "run">();
  // Few crossings are a matter of the whole series: marking every point of it would point at nothing.
  for (const { rule, points: found } of signals.filter(({ rule }) => rule !== "few-crossings").toReversed()) {
    for (const at of found) marked.set(points[at]?.place ?? 0, rule === "outside-limits" ? "outside" : "run");
  }
  return marked;
}
