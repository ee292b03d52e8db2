import type { Chart, ChartHead, ChartTable } from "./chart.ts";
import { figureText, notFinalText, tickText } from "./figure-text.ts";
import { bottomAxis, drawing, edgesOf, type Frame, words } from "./frame.ts";
import { focusable, ink, mark } from "./ink.ts";
import { straightLine } from "./lines.ts";
import { shortName } from "./place-labels.ts";
import { linearScale, logRange, logScale, logTicks, type Scale, ticksTo } from "./scale.ts";
import { type SvgNode, svgNode } from "./svg-node.ts";

/** One row: an estimate with its interval; what is missing has its reason. */
export interface IntervalRow {
  readonly name: string;
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly reason: string | null;
  /** Cultures behind it that are not decided. */
  readonly open?: number | undefined;
}

/** What a list of intervals is drawn from, in the order in which it is read. */
export interface IntervalInput extends ChartHead {
  readonly unit: string;
  readonly decimals: number;
  /** `log` for ratios: twice and half lie equally far from 1. */
  readonly scale: "linear" | "log";
  readonly reference: number;
  readonly referenceName: string;
  readonly rows: readonly IntervalRow[];
}

const rowHeight = 30;

/** A list of estimates with their intervals around a reference: the order says less than the intervals do. */
export function intervalList(input: IntervalInput): Chart {
  const { rows, unit, reference, title, sentence } = input;
  const frame: Frame = {
    width: 760,
    height: 40 + rows.length * rowHeight + 62,
    left: 130,
    right: 190,
    top: 34,
    bottom: 62,
  };
  const { x, ticks } = axisOf(input, edgesOf(frame).x);
  const [bottom, top] = edgesOf(frame).y;
  const drawn = rows.map((row, at) => rowOf(row, top + (at + 0.5) * rowHeight, { input, x, frame }));
  const middle = straightLine(
    [
      [x(reference), top - 6],
      [x(reference), bottom],
    ],
    { color: ink.words, dash: "6 4", width: 1.4 },
  );
  const parts = [
    bottomAxis(frame, { places: ticks.map((tick) => ({ at: x(tick), text: tickText(tick) })), label: unit }),
    middle,
    words(input.referenceName, [x(reference), top - 12], { anchor: "middle", color: ink.soft }),
    ...drawn.map(({ node }) => node),
  ];
  return {
    title,
    sentence,
    svg: drawing(input, frame, parts),
    table: tableOf(input),
    pointTexts: drawn.map(({ text }) => text),
  };
}

function tableOf({ rows, unit, title, decimals }: IntervalInput): ChartTable {
  const round = (value: number | null) => (value === null ? null : Number(value.toFixed(decimals)));
  return {
    caption: title,
    columns: [
      { label: "Name", unit: null },
      ...["Estimate", "Lower limit", "Upper limit"].map((label) => ({ label, unit })),
      { label: "Note", unit: null },
    ],
    rows: rows.map(({ name, estimate, lower, upper, reason, open }) => [
      ...[name, round(estimate), round(lower), round(upper)],
      `${reason ?? ""}${notFinalText(open)}`.replace(/^, /, ""),
    ]),
  };
}

function axisOf({ rows, scale, reference }: IntervalInput, across: [number, number]): { x: Scale; ticks: number[] } {
  const values = [reference, ...rows.flatMap(({ estimate, lower, upper }) => [estimate, lower, upper])];
  const known = values.filter((value) => value !== null);
  if (scale === "linear") {
    const ticks = ticksTo(Math.max(...known), 6);
    return { x: linearScale([0, ticks.at(-1) ?? 1], across), ticks };
  }
  // Zero has no place on this scale: an arrow at the left end stands for it.
  const above = known.filter((value) => value > 0);
  const range = logRange(Math.min(...above), Math.max(...above));
  const x = logScale(range, across);
  return { x: (value) => x(Math.max(value, range[0])), ticks: logTicks(range) };
}

interface RowPlace {
  readonly input: IntervalInput;
  readonly x: Scale;
  readonly frame: Frame;
}

function rowOf(row: IntervalRow, y: number, at: RowPlace): { node: SvgNode; text: string } {
  const { name, estimate, lower, upper, reason, open } = row;
  const { decimals, reference, unit } = at.input;
  const [left, right] = edgesOf(at.frame).x;
  const label = words(shortName(name, 16), [8, y + 4]);
  if (estimate === null) {
    const why = reason ?? "not given";
    const text = `${name}: ${why}`;
    return { text, node: focusable(text, label, words(why, [left + 6, y + 4], { color: ink.soft, halo: true })) };
  }
  const figure = (value: number | null) => (value === null ? "none" : figureText(value, decimals));
  const printed = `${figure(estimate)} (${figure(lower)} to ${figure(upper)})`;
  const isApart = (lower !== null && lower > reference) || (upper !== null && upper < reference);
  const apart = isApart ? ", apart from the reference" : "";
  const text = `${name}: ${printed} ${unit}${apart}${reason === null ? "" : `; ${reason}`}${notFinalText(open)}`;
  const drawn = intervalOf({ estimate, lower, upper }, y, { ...at, isApart, isHollow: open !== undefined });
  const beside = [words(printed, [right + 12, y + 4], { bold: isApart })];
  if (open !== undefined) beside.push(words(notFinalText(open).slice(2), [right + 12, y + 15], { size: 11 }));
  return { text, node: focusable(text, label, ...drawn, ...beside) };
}

const hollow = (color: string) => ({ fill: ink.ground, stroke: color, "stroke-width": 1.6 });

function intervalOf(
  { estimate, lower, upper }: { estimate: number; lower: number | null; upper: number | null },
  y: number,
  { input, x, frame, isApart, isHollow }: RowPlace & { isApart: boolean; isHollow: boolean },
): SvgNode[] {
  const [left, right] = edgesOf(frame).x;
  const color = isApart ? ink.signal : ink.words;
  const [from, to] = [lower === null ? left : x(lower), upper === null ? right : x(upper)];
  const bar = straightLine(
    [
      [from, y],
      [to, y],
    ],
    { color, dash: "none", width: 1.8 },
  );
  // An end without a limit has no stroke across: the interval goes on.
  const ends = [lower === null ? [] : [from], upper === null ? [] : [to]].flat();
  const strokes = ends.map((end) =>
    svgNode("path", { d: `M${end.toFixed(2)} ${y - 5}v10`, stroke: color, "stroke-width": 1.8 }),
  );
  // A ratio of 0 lies beyond every logarithmic axis: an arrow at its left end says so.
  const arrow = `M${left + 10} ${y - 6}L${left} ${y}L${left + 10} ${y + 6}Z`;
  const shape =
    input.scale === "log" && estimate === 0
      ? svgNode("path", { d: arrow, ...(isHollow ? hollow(color) : { fill: color }), class: "chart-mark" })
      : mark(isApart ? "diamond" : "circle", [x(estimate), y], color, { isHollow });
  return [bar, ...strokes, shape];
}
