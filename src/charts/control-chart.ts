import type { Chart, ChartHead } from "./chart.ts";
import { figureText, notFinalText } from "./figure-text.ts";
import { bottomAxis, drawing, edgesOf, plotFrame, thinned, valueAxis, words } from "./frame.ts";
import { focusable, ink, mark } from "./ink.ts";
import { straightLine } from "./lines.ts";
import { linearScale, type Scale, ticksTo } from "./scale.ts";
import { spreadLabels } from "./spread-labels.ts";
import { type SvgNode, svgNode } from "./svg-node.ts";

/** One point of a control chart; without a value it stands in the table alone, with the reason. */
export interface ControlPoint {
  /** The period (u chart) or the infection that ended the gap (g chart). */
  readonly label: string;
  readonly value: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** What a rule found about this point: outside its limits, or part of a run; null for nothing. */
  readonly signal: "outside" | "run" | null;
  readonly reason: string | null;
  /** Cultures behind it that are not decided. */
  readonly open?: number | undefined;
}

/** What a u chart or a g chart is drawn from. */
export interface ControlInput extends ChartHead {
  /** What is measured, such as `infections per 1,000 catheter-days` or `catheter-days between infections`. */
  readonly unit: string;
  /** What the points are, such as `month` or `infection`. */
  readonly pointsAre: string;
  readonly decimals: number;
  readonly center: number;
  readonly centerName: string;
  /** What runs are judged against, where that is not the center; null for none. */
  readonly median: number | null;
  readonly points: readonly ControlPoint[];
}

const signalWords = { outside: "outside its limits", run: "in a run that chance rarely makes" } as const;

/** A control chart: values in order with their center line and limits, which change where the days change. */
export function controlChart(input: ControlInput): Chart {
  const { points, unit, center } = input;
  const { x: across, y: up } = edgesOf(plotFrame);
  const most = Math.max(center, ...points.flatMap(({ value, upper }) => [value ?? 0, upper ?? 0]));
  const ticks = ticksTo(most, 5);
  const y = linearScale([0, ticks.at(-1) ?? 1], up);
  const x = linearScale([-0.5, Math.max(0.5, points.length - 0.5)], across);
  const drawn = points.flatMap((point, at) => (point.value === null ? [] : [{ point, at, value: point.value }]));
  const texts = drawn.map(({ point, value }) => textOf(point, value, input));
  const line = points.map(({ value }, at) => (value === null ? null : ([x(at), y(value)] as const)));
  const parts = [
    valueAxis(plotFrame, y, { ticks, label: unit }),
    bottomAxis(plotFrame, {
      places: thinned(points, 9).map(({ label: { label }, at }) => ({ at: x(at), text: label })),
      label: input.pointsAre,
    }),
    ...limitLines(input, { x, y }),
    straightLine(line, { color: ink.words, dash: "none", width: 1.4 }),
    ...drawn.map(({ point, at, value }, place) => pointOf(point, [x(at), y(value)], texts[place] ?? "")),
  ];
  const round = (value: number | null) => (value === null ? null : Number(value.toFixed(input.decimals)));
  const rows = points.map((point) => [
    ...[point.label, round(point.value), round(point.lower), round(point.upper)],
    point.reason ?? foundWords(point),
  ]);
  const columns = [
    { label: input.pointsAre, unit: null },
    ...["Value", "Lower limit", "Upper limit"].map((label) => ({ label, unit })),
    { label: "Found", unit: null },
  ];
  const { title, sentence } = input;
  return {
    title,
    sentence,
    svg: drawing(input, plotFrame, parts),
    table: { caption: title, columns, rows },
    pointTexts: texts,
  };
}

function foundWords({ signal, open }: ControlPoint): string {
  const found = signal === null ? "" : signalWords[signal];
  return `${found}${notFinalText(open)}`.replace(/^, /, "");
}

function textOf(
  { label, lower, upper, signal, open }: ControlPoint,
  value: number,
  { unit, decimals }: ControlInput,
): string {
  const figure = (one: number) => figureText(one, decimals);
  const limits = lower === null || upper === null ? "" : `, limits ${figure(lower)} to ${figure(upper)}`;
  return `${label}: ${figure(value)} ${unit}${limits}${signal === null ? "" : `, ${signalWords[signal]}`}${notFinalText(open)}`;
}

function limitLines(input: ControlInput, { x, y }: { x: Scale; y: Scale }): SvgNode[] {
  const { points, center, centerName, median } = input;
  const right = edgesOf(plotFrame).x[1];
  const stairs = (pick: "lower" | "upper") =>
    points.flatMap((point, at) => {
      const value = point[pick];
      return value === null ? [null] : [[x(at - 0.5), y(value)] as const, [x(at + 0.5), y(value)] as const];
    });
  const look = { color: ink.soft, dash: "6 4", width: 1.4 };
  const last = (pick: "lower" | "upper") => points.findLast((point) => point[pick] !== null)?.[pick];
  const ends = [
    { text: centerName, at: center },
    { text: "median", at: median },
    { text: "upper limit", at: last("upper") },
    { text: "lower limit", at: last("lower") },
  ].flatMap(({ text, at }) => (at === undefined || at === null ? [] : [{ text, at }]));
  const [bottom, top] = edgesOf(plotFrame).y;
  const heights = spreadLabels(
    ends.map(({ at }) => y(at)),
    { gap: 16, low: top, high: bottom },
  );
  const labels = ends.map(({ text }, at) => words(text, [right + 8, (heights[at] ?? 0) + 4], { color: ink.soft }));
  const level = (at: number, dash: string) =>
    straightLine(
      [
        [edgesOf(plotFrame).x[0], y(at)],
        [right, y(at)],
      ],
      { color: ink.soft, dash, width: 1.4 },
    );
  return [
    level(center, "none"),
    ...(median === null ? [] : [level(median, "2 3")]),
    straightLine(stairs("lower"), look),
    straightLine(stairs("upper"), look),
    svgNode("g", { "aria-hidden": "true" }, ...labels),
  ];
}

function pointOf({ signal, open }: ControlPoint, at: readonly [number, number], text: string): SvgNode {
  const shape = signal === "outside" ? "diamond" : signal === "run" ? "triangle" : "circle";
  return focusable(text, mark(shape, at, signal === null ? ink.words : ink.signal, { isHollow: open !== undefined }));
}
