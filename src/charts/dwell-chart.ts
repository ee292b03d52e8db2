import type { Chart, ChartHead } from "./chart.ts";
import { figureText, tickText } from "./figure-text.ts";
import { bottomAxis, drawing, edgesOf, plotFrame, valueAxis, words } from "./frame.ts";
import { focusable, ink, lookOf, mark } from "./ink.ts";
import { stepLine } from "./lines.ts";
import { shortName } from "./place-labels.ts";
import { linearScale, type Scale, ticksTo } from "./scale.ts";
import { spreadLabels } from "./spread-labels.ts";
import { type SvgNode, svgNode } from "./svg-node.ts";

/** One step of a dwell curve. */
export interface DwellStep {
  /** Dwell time in days. */
  readonly time: number;
  readonly atRisk: number;
  readonly events: number;
  readonly censored: number;
  /** The share still in place after it, from 0 to 1. */
  readonly survival: number;
}

/** A ward's curve. */
export interface DwellSeries {
  readonly name: string;
  readonly steps: readonly DwellStep[];
  /** Days by which half were removed; null where the curve does not reach it. */
  readonly median: number | null;
}

/** What dwell curves are drawn from: at most six wards. */
export interface DwellInput extends ChartHead {
  readonly series: readonly DwellSeries[];
}

/**
 * Kaplan-Meier curves of catheters still in place. A removal is a step down; a short stroke marks a catheter that was only
 * watched so far (still in place, died or discharged with it).
 */
export function dwellChart(input: DwellInput): Chart {
  const { series, title, sentence } = input;
  const { x: across, y: up } = edgesOf(plotFrame);
  const days = ticksTo(Math.max(1, ...series.flatMap(({ steps }) => steps.map(({ time }) => time))), 7);
  const x = linearScale([0, days.at(-1) ?? 1], across);
  const y = linearScale([0, 100], up);
  const curves = series.map((one, at) => curveOf(one, at, { x, y }));
  const parts = [
    valueAxis(plotFrame, y, { ticks: [0, 25, 50, 75, 100], label: "% still in place" }),
    bottomAxis(plotFrame, {
      places: days.map((day) => ({ at: x(day), text: tickText(day) })),
      label: "dwell time (days)",
    }),
    ...curves.map(({ drawn }) => drawn),
    nameLabels(series, y),
  ];
  const rows = series.flatMap(({ name, steps }) =>
    steps.map((step) => [
      name,
      step.time,
      step.atRisk,
      step.events,
      step.censored,
      Number((step.survival * 100).toFixed(1)),
    ]),
  );
  const columns = [
    { label: "Unit", unit: null },
    { label: "Dwell time", unit: "days" },
    ...["Watched", "Removed", "Watched so far"].map((label) => ({ label, unit: "catheters" })),
    { label: "Still in place", unit: "%" },
  ];
  const pointTexts = curves.flatMap(({ texts }) => texts);
  return {
    title,
    sentence,
    svg: drawing(input, plotFrame, parts),
    table: { caption: title, columns, rows },
    pointTexts,
  };
}

function curveOf(
  { name, steps }: DwellSeries,
  at: number,
  { x, y }: { x: Scale; y: Scale },
): { drawn: SvgNode; texts: string[] } {
  const { shape, dash, color } = lookOf(at);
  const places = steps.map(({ time, survival }) => [x(time), y(survival * 100)] as const);
  const line = stepLine([[x(0), y(100)], ...places], { color, dash, width: 2 });
  const points = steps.map(({ time, events, censored, survival, atRisk }, i) => {
    const place = places[i] ?? [0, 0];
    const share = `${figureText(survival * 100, 1)}% still in place after ${figureText(time, 1)} days`;
    const text = `${name}: ${share}; of ${atRisk}, ${events} removed, ${censored} watched so far`;
    const stroke = svgNode("path", {
      d: `M${place[0].toFixed(2)} ${(place[1] - 6).toFixed(2)}v12`,
      stroke: ink.words,
      "stroke-width": 1.6,
    });
    const shown = [...(events > 0 ? [mark(shape, place, color)] : []), ...(censored > 0 ? [stroke] : [])];
    return { text, node: focusable(text, ...shown) };
  });
  return { drawn: svgNode("g", {}, line, ...points.map(({ node }) => node)), texts: points.map(({ text }) => text) };
}

function nameLabels(series: readonly DwellSeries[], y: Scale): SvgNode {
  const { x, y: up } = edgesOf(plotFrame);
  const heights = spreadLabels(
    series.map(({ steps }) => y((steps.at(-1)?.survival ?? 1) * 100)),
    { gap: 34, low: up[1], high: up[0] - 16 },
  );
  const labels = series.flatMap(({ name, median }, at) => {
    const [{ shape, color }, height] = [lookOf(at), heights[at] ?? 0];
    const half = median === null ? "median not reached" : `median ${figureText(median, 1)} days`;
    return [
      mark(shape, [x[1] + 14, height], color),
      words(shortName(name, 15), [x[1] + 26, height + 4], { color, bold: true }),
      words(half, [x[1] + 26, height + 19], { color: ink.soft }),
    ];
  });
  return svgNode("g", { "aria-hidden": "true" }, ...labels);
}
