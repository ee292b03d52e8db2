import { edgesOf, plotFrame, words } from "./frame.ts";
import type { FunnelInput, FunnelLine } from "./funnel-chart.ts";
import { ink } from "./ink.ts";
import { type LinePlace, straightLine } from "./lines.ts";
import type { Scale } from "./scale.ts";
import { spreadLabels } from "./spread-labels.ts";
import { type SvgNode, svgNode } from "./svg-node.ts";

/** The axes of a funnel and the highest rate that is drawn. */
export interface FunnelScales {
  readonly x: Scale;
  readonly y: Scale;
  readonly top: number;
}

/** The target and both pairs of limits over the whole axis, with their names at the right end. */
export function funnelLines(input: FunnelInput, { x, y, top }: FunnelScales): SvgNode[] {
  const [left, right] = edgesOf(plotFrame).x;
  const middle = straightLine(
    [
      [left, y(input.target)],
      [right, y(input.target)],
    ],
    { color: ink.words, dash: "none", width: 1.5 },
  );
  const lines = [input.inner, input.outer].flatMap((line, at) => {
    const look = { color: ink.soft, dash: at === 0 ? "6 4" : "2 3", width: 1.4 };
    return (["lower", "upper"] as const).map((side) => straightLine(limitPlaces(line, side, { x, y, top }), look));
  });
  return [middle, ...lines, svgNode("g", { "aria-hidden": "true" }, ...limitNames(input, { x, y, top }))];
}

/** A limit that leaves the plot is drawn up to its edge, and goes on where it comes back. */
function limitPlaces({ places }: FunnelLine, side: "lower" | "upper", { x, y, top }: FunnelScales): LinePlace[] {
  return places.flatMap((one, at): LinePlace[] => {
    const before = places[at - 1];
    const own = one[side] > top ? null : ([x(one.days), y(one[side])] as const);
    if (!before || before[side] > top === one[side] > top) return [own];
    const part = (top - before[side]) / (one[side] - before[side]);
    const edge = [x(before.days + part * (one.days - before.days)), y(top)] as const;
    return [edge, own];
  });
}

function limitNames(input: FunnelInput, { y, top }: FunnelScales): SvgNode[] {
  const ends = [
    { text: input.targetName, at: input.target },
    ...[input.inner, input.outer].flatMap(({ name, places }) => {
      const end = places.at(-1);
      const text = `${name} limit`;
      return end ? [end.upper, end.lower].map((at) => ({ text, at })) : [];
    }),
  ].filter(({ at }) => at <= top);
  const [bottom, upper] = edgesOf(plotFrame).y;
  const heights = spreadLabels(
    ends.map(({ at }) => y(at)),
    { gap: 15, low: upper, high: bottom },
  );
  const right = edgesOf(plotFrame).x[1];
  return ends.map(({ text }, at) => words(text, [right + 8, (heights[at] ?? 0) + 4], { color: ink.soft }));
}
