import type { Chart, ChartHead } from "./chart.ts";
import { figureText, tickText } from "./figure-text.ts";
import { bottomAxis, drawing, edgesOf, plotFrame, valueAxis, words } from "./frame.ts";
import { focusable, ink, type MarkShape, mark } from "./ink.ts";
import { straightLine } from "./lines.ts";
import { placeLabels, shortName } from "./place-labels.ts";
import { linearScale, type Scale, ticksTo } from "./scale.ts";
import { spreadLabels } from "./spread-labels.ts";
import { type SvgNode, svgNode } from "./svg-node.ts";

/** Where a ward lies on a funnel. */
export type FunnelPosition = "inside" | "outside-inner" | "outside-outer";

/** A ward on a funnel. A ward without days has no rate and stands in the table alone, with the reason. */
export interface FunnelWard {
  readonly name: string;
  readonly days: number;
  readonly rate: number | null;
  readonly position: FunnelPosition;
  readonly reason: string | null;
}

/** A pair of limits over the days, drawn as two lines. */
export interface FunnelLine {
  /** Such as `95%`. */
  readonly name: string;
  readonly places: readonly { readonly days: number; readonly lower: number; readonly upper: number }[];
}

/** What a funnel is drawn from; rates are in the unit that `unit` names. */
export interface FunnelInput extends ChartHead {
  /** Such as `per 1,000 catheter-days`. */
  readonly unit: string;
  /** Such as `catheter-days`. */
  readonly daysUnit: string;
  readonly target: number;
  readonly targetName: string;
  readonly inner: FunnelLine;
  readonly outer: FunnelLine;
  readonly wards: readonly FunnelWard[];
}

type DrawnWard = FunnelWard & { readonly rate: number };

/** Letters of a name beside its mark. */
const longestName = 12;

const shapes: Readonly<Record<FunnelPosition, MarkShape>> = {
  inside: "ring",
  "outside-inner": "triangle",
  "outside-outer": "diamond",
};

/** A funnel: rates of wards over their days, with the limits between which chance alone would put them. */
export function funnelChart(input: FunnelInput): Chart {
  const { unit, daysUnit, inner, outer, wards } = input;
  const { x: across, y: up } = edgesOf(plotFrame);
  const drawn = wards.flatMap((ward) => (ward.rate === null ? [] : [{ ...ward, rate: ward.rate }]));
  const places = [...inner.places, ...outer.places];
  const dayTicks = ticksTo(Math.max(...wards.map(({ days }) => days), ...places.map(({ days }) => days), 1), 6);
  const rateTicks = ticksTo(
    Math.max(input.target * 2, ...drawn.map(({ rate }) => rate), ...inner.places.map(({ upper }) => upper)),
    5,
  );
  const top = rateTicks.at(-1) ?? 1;
  const x = linearScale([0, dayTicks.at(-1) ?? 1], across);
  const y = linearScale([0, top], up);
  const texts = drawn.map((ward) => textOf(ward, input));
  const parts = [
    valueAxis(plotFrame, y, { ticks: rateTicks, label: unit }),
    bottomAxis(plotFrame, { places: dayTicks.map((tick) => ({ at: x(tick), text: tickText(tick) })), label: daysUnit }),
    ...limitLines(input, { x, y, top }),
    ...pointsOf(drawn, texts, { x, y }),
  ];
  const rows = wards.map(({ name, days, rate, position, reason }) => [
    ...[name, days, rate === null ? null : Number(rate.toFixed(2)), reason ?? positionWords(position, input)],
  ]);
  const columns = [
    { label: "Ward", unit: null },
    { label: "Days", unit: daysUnit },
    { label: "Rate", unit },
    { label: "Place", unit: null },
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

function positionWords(position: FunnelPosition, { inner, outer }: FunnelInput): string {
  if (position === "inside") return `inside the ${inner.name} limits`;
  return `outside the ${position === "outside-inner" ? inner.name : outer.name} limits`;
}

function textOf(ward: DrawnWard, input: FunnelInput): string {
  const days = `${figureText(ward.days, 0)} ${input.daysUnit}`;
  return `${ward.name}: ${figureText(ward.rate, 2)} ${input.unit}, ${days}, ${positionWords(ward.position, input)}`;
}

interface Scales {
  readonly x: Scale;
  readonly y: Scale;
}

function limitLines(input: FunnelInput, { x, y, top }: Scales & { top: number }): SvgNode[] {
  const right = edgesOf(plotFrame).x[1];
  const middle = straightLine(
    [
      [x(0), y(input.target)],
      [right, y(input.target)],
    ],
    { color: ink.words, dash: "none", width: 1.5 },
  );
  const lines = [input.inner, input.outer].flatMap(({ places }, at) => {
    const look = { color: ink.soft, dash: at === 0 ? "6 4" : "2 3", width: 1.4 };
    // Where a limit leaves the plot its line is interrupted.
    const over = (pick: "lower" | "upper") =>
      places.map((one) => (one[pick] > top ? null : ([x(one.days), y(one[pick])] as const)));
    return [straightLine(over("lower"), look), straightLine(over("upper"), look)];
  });
  const ends = [
    { text: input.targetName, at: input.target },
    ...[input.inner, input.outer].flatMap(({ name, places }) => {
      const end = places.at(-1);
      return end
        ? [
            { text: `${name} limit`, at: end.upper },
            { text: `${name} limit`, at: end.lower },
          ]
        : [];
    }),
  ].filter(({ at }) => at <= top);
  const [bottom, upper] = edgesOf(plotFrame).y;
  const heights = spreadLabels(
    ends.map(({ at }) => y(at)),
    { gap: 15, low: upper, high: bottom },
  );
  const labels = ends.map(({ text }, at) => words(text, [right + 8, (heights[at] ?? 0) + 4], { color: ink.soft }));
  return [middle, ...lines, svgNode("g", { "aria-hidden": "true" }, ...labels)];
}

/** Names are placed for the wards outside the limits first, then for those with the most days. */
function pointsOf(wards: readonly DrawnWard[], texts: readonly string[], { x, y }: Scales): SvgNode[] {
  const [left, right] = edgesOf(plotFrame).x;
  const [bottom, top] = edgesOf(plotFrame).y;
  const byWeight = wards
    .map((ward, at) => ({ ward, at }))
    .sort((a, b) => weightOf(a.ward) - weightOf(b.ward) || b.ward.days - a.ward.days);
  const places = placeLabels(
    byWeight.map(({ ward }) => ({ x: x(ward.days), y: y(ward.rate), name: shortName(ward.name, longestName) })),
    { left, right: right + 6, top: top - 16, bottom },
  );
  const placeOf = new Map(byWeight.map(({ at }, place) => [at, places[place] ?? null]));
  return wards.map((ward, at) => {
    const isOutside = ward.position !== "inside";
    const color = isOutside ? ink.signal : ink.words;
    const place = placeOf.get(at);
    const name = shortName(ward.name, longestName);
    const look = { bold: isOutside, color, halo: true };
    const label = place ? [words(name, [place.x, place.y], { ...look, anchor: place.anchor })] : [];
    return focusable(texts[at] ?? "", mark(shapes[ward.position], [x(ward.days), y(ward.rate)], color), ...label);
  });
}

function weightOf({ position }: DrawnWard): number {
  return ["outside-outer", "outside-inner", "inside"].indexOf(position);
}
