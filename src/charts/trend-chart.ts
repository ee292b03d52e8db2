import type { Chart, ChartHead } from "./chart.ts";
import { figureText, notFinalText } from "./figure-text.ts";
import { bottomAxis, drawing, edgesOf, plotFrame, thinned, valueAxis, words } from "./frame.ts";
import { focusable, lookOf, mark } from "./ink.ts";
import { straightLine } from "./lines.ts";
import { shortName } from "./place-labels.ts";
import { linearScale, type Scale, ticksTo } from "./scale.ts";
import { spreadLabels } from "./spread-labels.ts";
import { type SvgNode, svgNode } from "./svg-node.ts";

/** One line of a trend chart; a missing value interrupts it and is never zero. */
export interface TrendSeries {
  readonly name: string;
  /** One for each period, in their order. */
  readonly values: readonly (number | null)[];
  /** Cultures behind each that are not decided; left out: none behind any. */
  readonly open?: readonly number[] | undefined;
}

/** What trends are drawn from: at most six series, all on one scale from zero. */
export interface TrendInput extends ChartHead {
  readonly unit: string;
  readonly decimals: number;
  readonly periods: readonly string[];
  /** What the periods are, such as `month`. */
  readonly periodsAre: string;
  readonly series: readonly TrendSeries[];
}

/** Trends of several wards on one scale, each with its own shape and dash and its name at its end. */
export function trendChart(input: TrendInput): Chart {
  const { unit, periods, series } = input;
  const { x: across, y: up } = edgesOf(plotFrame);
  const ticks = ticksTo(Math.max(0, ...series.flatMap(({ values }) => values.map((value) => value ?? 0))), 5);
  const y = linearScale([0, ticks.at(-1) ?? 1], up);
  const x = linearScale([-0.25, Math.max(0.25, periods.length - 0.75)], across);
  const lines = series.map((one, at) => seriesOf(one, at, { input, x, y }));
  const parts = [
    valueAxis(plotFrame, y, { ticks, label: unit }),
    bottomAxis(plotFrame, {
      places: thinned(periods, 9).map(({ label, at }) => ({ at: x(at), text: label })),
      label: input.periodsAre,
    }),
    ...lines.map(({ drawn }) => drawn),
    nameLabels(series, y),
  ];
  const round = (value: number | null) => (value === null ? null : Number(value.toFixed(input.decimals)));
  const rows = periods.map((period, at) => [
    period,
    ...series.map(({ values, open }) => {
      const value = round(values[at] ?? null);
      const words = notFinalText(open?.[at]);
      return value === null || words === "" ? value : `${value}${words}`;
    }),
  ]);
  const columns = [{ label: input.periodsAre, unit: null }, ...series.map(({ name }) => ({ label: name, unit }))];
  const { title, sentence } = input;
  const pointTexts = lines.flatMap(({ texts }) => texts);
  return {
    title,
    sentence,
    svg: drawing(input, plotFrame, parts),
    table: { caption: title, columns, rows },
    pointTexts,
  };
}

function seriesOf(
  { name, values, open }: TrendSeries,
  at: number,
  { input, x, y }: { input: TrendInput; x: Scale; y: Scale },
): { drawn: SvgNode; texts: string[] } {
  const { shape, dash, color } = lookOf(at);
  const places = values.map((value, period) => (value === null ? null : ([x(period), y(value)] as const)));
  const points = values.flatMap((value, period) => {
    const place = places[period];
    if (value === null || !place) return [];
    const text = `${name}, ${input.periods[period] ?? ""}: ${figureText(value, input.decimals)} ${input.unit}${notFinalText(open?.[period])}`;
    const isHollow = (open?.[period] ?? 0) > 0;
    return [{ text, node: focusable(text, mark(shape, place, color, { isHollow })) }];
  });
  const line = straightLine(places, { color, dash, width: 1.8 });
  return { drawn: svgNode("g", {}, line, ...points.map(({ node }) => node)), texts: points.map(({ text }) => text) };
}

function nameLabels(series: readonly TrendSeries[], y: Scale): SvgNode {
  const ends = series.flatMap(({ name, values }, at) => {
    const last = values.findLast((value) => value !== null);
    return last === undefined || last === null ? [] : [{ name, height: y(last), look: lookOf(at) }];
  });
  const { x, y: up } = edgesOf(plotFrame);
  const heights = spreadLabels(
    ends.map(({ height }) => height),
    { gap: 17, low: up[1], high: up[0] },
  );
  const labels = ends.flatMap(({ name, look }, at) => [
    mark(look.shape, [x[1] + 14, heights[at] ?? 0], look.color),
    words(shortName(name, 15), [x[1] + 26, (heights[at] ?? 0) + 4], { color: look.color, bold: true }),
  ]);
  return svgNode("g", { "aria-hidden": "true" }, ...labels);
}
