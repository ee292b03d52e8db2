import type { ChartInput } from "../../../shared/chart-input.ts";
import { notFinalWords } from "../../../shared/figure-words.ts";
import { controlPoints } from "../statistics/control-points.ts";
import { falseAlarms } from "../statistics/false-alarms.ts";
import { gChart } from "../statistics/g-chart.ts";
import { type LaneyLimits, laneyUChart, type MovingRanges } from "../statistics/laney-u-chart.ts";
import { type ChartPeriod, type UChart, uChart } from "../statistics/u-chart.ts";
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
import { judged, markedPlaces, percent } from "./control-notes.ts";
import { gapsBetween } from "./gaps-between.ts";

/** Three standard errors, or exact limits that leave no more outside. */
const sigmas = 3;

const whose = ({ chosen }: ComparisonFacts) => (chosen ? chosen.code : "all units together");

/** The months of a chart of rates: what was counted in each, and where it was not. */
interface Months {
  readonly labels: readonly string[];
  readonly periods: readonly ChartPeriod[];
  readonly isWatched: readonly boolean[];
  /** Open cases behind each month, where there are any. */
  readonly open: readonly ReturnType<typeof openPart>[];
  readonly chart: UChart;
}

function monthsOf(facts: ComparisonFacts): Months {
  const wards = facts.chosen ? [facts.chosen] : facts.wards;
  const sums = facts.months.map((_, at) =>
    totalsOf(wards.flatMap(({ months }): ComparedMonth[] => months.slice(at, at + 1))),
  );
  const periods = sums.map(({ infections, watchedDays }) => ({ events: infections ?? 0, days: watchedDays }));
  const isWatched = sums.map(({ infections }) => infections !== null);
  return { labels: facts.months, periods, isWatched, open: sums.map(openPart), chart: uChart({ periods, sigmas }) };
}

/** The monthly rates of the chosen ward, or of all wards together, around their own mean. */
export function monthlyControl(facts: ComparisonFacts): ChartInput[] {
  const head = { id: "months", title: `CAUTI rate by month of ${whose(facts)}` };
  const months = monthsOf(facts);
  const { center, points } = months.chart;
  if (!months.isWatched.includes(true))
    return [absentChart(head, "No month was under surveillance, so no infections were counted.")];
  if (center.value === null) return [absentChart(head, center.reason)];
  const limits = points.map(({ exactLower, exactUpper }) => ({ lower: exactLower, upper: exactUpper }));
  const sentence =
    "Shows months that chance alone would rarely give around this mean. It does not say why; a month within its limits may still need attention.";
  const exact = monthChart(months, { ...head, sentence, kind: "u", limits, notes: [zeroNote] });
  return [...exact, ...laneyControl(facts, months)];
}

const zeroNote = "A month without a CAUTI is never marked as outside its limits.";

interface Rates {
  readonly id: string;
  readonly title: string;
  readonly sentence: string;
  readonly kind: "u" | "laney";
  readonly limits: readonly LaneyLimits[];
  readonly notes: readonly string[];
}

function monthChart({ labels, periods, isWatched, open, chart }: Months, rates: Rates): ChartInput[] {
  const { kind, limits, notes, ...head } = rates;
  const places = periods.flatMap(({ days }, place) => (days === 0 ? [] : [place]));
  const events = periods.reduce((sum, period) => sum + period.events, 0);
  const found = judged(controlPoints(periods, limits), falseAlarms(kind, { events, months: places.length }));
  const signalAt = markedPlaces(found.signals, places);
  const scaled = (value: number | null | undefined) => (value == null ? null : value * per);
  return [
    {
      kind: "control",
      input: {
        ...{ ...head, unit: rateUnit, pointsAre: "month", decimals: 2 },
        ...{ center: (chart.center.value ?? 0) * per, centerName: "mean rate", median: scaled(found.median) },
        points: chart.points.map(({ rate }, place) => ({
          ...{ label: labels[place] ?? "", value: scaled(rate.value) },
          ...{ lower: scaled(limits[place]?.lower), upper: scaled(limits[place]?.upper) },
          // A month without events is not marked, even within a run: fewer infections are no alarm.
          signal: periods[place]?.events === 0 ? null : (signalAt.get(place) ?? null),
          reason: isWatched[place] ? (rate.value === null ? rate.reason : null) : "not under surveillance",
          ...open[place],
        })),
      },
      notes: [...found.notes, ...notes, ...hollowNotes(open)],
    },
  ];
}

const treatments: Readonly<Record<MovingRanges, { name: string; words: string }>> = {
  all: { name: "all moving ranges", words: "Limits use all moving ranges (Laney, Quality Engineering 2002;14:531)." },
  screened: {
    name: "outlying moving ranges left out",
    words:
      "Moving ranges of 3.267 times their mean or more are left out (Nelson, J Qual Technol 1982;14:172, from memory).",
  },
};

/**
 * Limits widened by the spread from month to month, for rates that differ by more than chance: with all moving ranges,
 * and a second chart without the outlying ones where there are any. Where the simulation raises too many false alarms
 * there is none, with the reason.
 */
function laneyControl(facts: ComparisonFacts, months: Months): ChartInput[] {
  const { periods } = months;
  const events = periods.reduce((sum, period) => sum + period.events, 0);
  const alarms = falseAlarms("laney", { events, months: periods.filter(({ days }) => days > 0).length });
  const title = `Monthly CAUTI rate of ${whose(facts)} with Laney limits`;
  if (!alarms.isUsed["outside-limits"]) {
    const rate = percent(alarms.rates["outside-limits"]);
    const reason = `Not drawn: with so few CAUTIs, chance alone puts a month outside Laney limits in ${rate} of charts (simulated).`;
    return [absentChart({ id: "laney", title }, reason)];
  }
  const [all, screened] = (["all", "screened"] as const).map((movingRanges) => ({
    movingRanges,
    ...laneyUChart({ periods, sigmas, movingRanges }),
  }));
  const drawn = [all, screened].flatMap((one) => (one && (one === all || one.leftOut > 0) ? [one] : []));
  return drawn.flatMap(({ movingRanges, spread, limits }) => {
    const { name, words } = treatments[movingRanges];
    const sentence =
      "Shows months outside limits that allow for the usual change from month to month. It does not say why a month is outside.";
    const notes = [
      words,
      spread === null
        ? "There are too few months to measure the spread from month to month."
        : `Spread from month to month: ${spread.toFixed(2)} times that of chance.`,
      drawn.length === 1
        ? "No moving range is outlying, so leaving outlying ones out (Nelson 1982) gives the same limits."
        : "The other treatment of outlying moving ranges has a chart of its own.",
    ];
    const id = movingRanges === "all" ? "laney" : "laney-screened";
    return monthChart(months, { id, title: `${title} (${name})`, sentence, kind: "laney", limits, notes });
  });
}

/** The catheter-days between the infections of the chosen ward, or of all wards together. */
export function gapControl(facts: ComparisonFacts): ChartInput {
  const head = { id: "gaps", title: `Catheter-days between CAUTIs of ${whose(facts)}, ${periodText(facts.months)}` };
  const { gaps, since } = gapsBetween(facts.chosen ? [facts.chosen] : facts.wards);
  const chart = gChart(gaps);
  if ("value" in chart) return absentChart(head, chart.reason);
  const { lower, upper, median } = chart;
  const series = gaps.map((value) => ({ value, lower, upper }));
  const found = judged(series, falseAlarms("g", { events: gaps.length + 1, months: facts.months.length }));
  const signalAt = markedPlaces(
    found.signals,
    gaps.map((_, place) => place),
  );
  const sentence =
    "Shows catheter-days from one infection to the next. Long gaps are good news; a short gap alone means little, because chance makes many.";
  return {
    kind: "control",
    input: {
      ...{ ...head, sentence, unit: "catheter-days between CAUTIs", pointsAre: "CAUTI, in order", decimals: 0 },
      ...{ center: median, centerName: "median", median: null },
      points: gaps.map((value, place) => ({
        ...{ label: `${place + 2}`, value, lower, upper, signal: signalAt.get(place) ?? null, reason: null },
      })),
    },
    notes: [
      ...openNotes(facts),
      ...(since === null
        ? []
        : [`${since.toLocaleString("en-US")} catheter-days have passed since the last CAUTI; they are not a gap yet.`]),
      ...found.notes,
    ],
  };
}

/** A culture that becomes a CAUTI divides one of the gaps, and no one knows which. */
function openNotes({ chosen, wards }: ComparisonFacts): string[] {
  const { open } = totalsOf((chosen ? [chosen] : wards).flatMap(({ months }) => months));
  return open === 0 ? [] : [`The gaps are ${notFinalWords(open)}.`];
}
