import type { ChartInput } from "../../../shared/chart-input.ts";
import { absentChart } from "./absent-chart.ts";
import {
  type ComparedMonth,
  type ComparedWard,
  type ComparisonFacts,
  hollowNotes,
  per,
  rateUnit,
  totalsOf,
} from "./comparison-facts.ts";

/** As many lines as can be told apart, one of which is that of all wards. */
const mostLines = 6;

/** The wards that are drawn as lines: the chosen one first, then those with the most catheter-days; in that order. */
export function drawnWards({ wards, chosen }: ComparisonFacts, most: number): readonly ComparedWard[] {
  const days = (ward: ComparedWard) => totalsOf(ward.months).catheterDays;
  const others = wards
    .filter((ward) => ward !== chosen && days(ward) > 0)
    .sort((a, b) => days(b) - days(a) || (a.code < b.code ? -1 : 1));
  return [...(chosen ? [chosen] : []), ...others].slice(0, most);
}

type Figure = (months: readonly ComparedMonth[]) => number | null;

const utilizationOf: Figure = (months) => {
  const { catheterDays, patientDays } = totalsOf(months);
  return patientDays === 0 ? null : catheterDays / patientDays;
};

const rateOf: Figure = (months) => {
  const { infections, watchedDays } = totalsOf(months);
  return infections === null || watchedDays === 0 ? null : (infections / watchedDays) * per;
};

/** Monthly utilization and rates of wards, each on one scale, with all wards together as a line of its own. */
export function trendsOfWards(facts: ComparisonFacts): ChartInput[] {
  const drawn = drawnWards(facts, mostLines - 1);
  const left = facts.wards.filter((ward) => !drawn.includes(ward)).map(({ code }) => code);
  const notes =
    left.length === 0
      ? []
      : [
          `Drawn are the units with the most catheter-days; not drawn alone: ${left.join(", ")}. Choose a unit to see it.`,
        ];
  const all = facts.months.map((_, at) => facts.wards.flatMap(({ months }) => months[at] ?? []));
  const linesOf = (figure: Figure, openOf?: Open) => ({
    ...{ decimals: 2, periods: [...facts.months], periodsAre: "month" },
    series: [
      ...drawn.map(({ code, months }) => seriesOf(code, months.map(alone), { figure, openOf })),
      ...(facts.wards.length > 1 ? [seriesOf("all units", all, { figure, openOf })] : []),
    ],
  });
  const utilization = {
    id: "utilization",
    title: "Device utilization by month",
    unit: "catheter-days per patient-day",
  };
  const rates = { id: "rates", title: "CAUTI rates by month", unit: rateUnit };
  const gap = "A line is interrupted where a unit has no catheter-days or was not under surveillance.";
  const [used, rate] = [linesOf(utilizationOf), linesOf(rateOf, (months) => totalsOf(months).open)];
  return [
    hasPoints(used)
      ? { kind: "trend", input: { ...utilization, sentence: utilizationSentence, ...used }, notes }
      : absentChart(utilization, "No unit has a patient-day in these months, so there is no utilization."),
    hasPoints(rate)
      ? {
          kind: "trend",
          input: { ...rates, sentence: rateSentence, ...rate },
          notes: [...notes, gap, ...hollowTrend(rate)],
        }
      : absentChart(rates, "No unit has catheter-days in a month under surveillance, so there is no rate."),
  ];
}

type Open = (months: readonly ComparedMonth[]) => number;

const alone = (month: ComparedMonth) => [month];

/** A line, and how many cultures are open behind each of its points where some are. */
function seriesOf(
  name: string,
  periods: readonly (readonly ComparedMonth[])[],
  { figure, openOf }: { figure: Figure; openOf: Open | undefined },
) {
  const open = openOf ? periods.map(openOf) : [];
  return { name, values: periods.map(figure), ...(open.some((count) => count > 0) ? { open } : {}) };
}

function hollowTrend({ series }: { series: readonly { readonly open?: readonly number[] }[] }): string[] {
  return hollowNotes(series.filter(({ open }) => open !== undefined).map(() => ({ open: 1 })));
}

function hasPoints({ series }: { series: readonly { readonly values: readonly (number | null)[] }[] }): boolean {
  return series.some(({ values }) => values.some((value) => value !== null));
}

const utilizationSentence =
  "Shows how much catheters were used, all units on one scale; it does not show whether they were needed, and units with other patients differ for good reasons.";
const rateSentence =
  "Shows the rates of single months on one scale; one infection more or less moves a small unit far, so a single high month is no sign of anything.";
