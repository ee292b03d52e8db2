import type { ChartHead } from "./chart.ts";
import { tickText } from "./figure-text.ts";
import { ink } from "./ink.ts";
import type { Scale } from "./scale.ts";
import { type SvgNode, svgNode } from "./svg-node.ts";

/** A drawing's size and the room around the plot. Text is never measured, so its room is kept free. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The room that charts with two axes take. */
export const plotFrame: Frame = { width: 760, height: 400, left: 66, right: 150, top: 38, bottom: 58 };

/** The places of the plot's edges. */
export function edgesOf(frame: Frame): { x: [number, number]; y: [number, number] } {
  return { x: [frame.left, frame.width - frame.right], y: [frame.height - frame.bottom, frame.top] };
}

/** The drawing around its parts, with title and description for who does not see it. */
export function drawing(head: ChartHead, { width, height }: Frame, parts: readonly SvgNode[]): SvgNode {
  return svgNode(
    "svg",
    {
      ...{ xmlns: "http://www.w3.org/2000/svg", viewBox: `0 0 ${width} ${height}`, width, height, class: "chart" },
      ...{ role: "group", "aria-labelledby": `${head.id}-title ${head.id}-words` },
      ...{ "font-family": "system-ui, 'Liberation Sans', sans-serif", "font-size": 13, fill: ink.words },
    },
    svgNode("title", { id: `${head.id}-title` }, head.title),
    svgNode("desc", { id: `${head.id}-words` }, head.sentence),
    svgNode("rect", { width, height, fill: ink.ground, class: "chart-ground" }),
    ...parts,
  );
}

/** Words of a drawing. */
export function words(
  text: string,
  [x, y]: readonly [number, number],
  look: { anchor?: "start" | "middle" | "end"; color?: string; bold?: boolean; halo?: boolean; size?: number } = {},
): SvgNode {
  // A halo keeps words readable where a line runs behind them.
  const halo = look.halo ? { stroke: ink.ground, "stroke-width": 4, "paint-order": "stroke" } : {};
  const paint = {
    fill: look.color ?? ink.words,
    "font-weight": look.bold ? "600" : undefined,
    "font-size": look.size,
    ...halo,
  };
  return svgNode("text", { x, y, "text-anchor": look.anchor ?? "start", ...paint }, text);
}

/** The axis of values at the left: lines across the plot with their figures, and what is measured above it. */
export function valueAxis(
  frame: Frame,
  y: Scale,
  { ticks, label }: { ticks: readonly number[]; label: string },
): SvgNode {
  const [from, to] = edgesOf(frame).x;
  const lines = ticks.flatMap((tick) => [
    svgNode("path", { d: `M${from} ${Math.round(y(tick) * 100) / 100}H${to}`, stroke: ink.rule, class: "chart-rule" }),
    words(tickText(tick), [from - 8, y(tick) + 4], { anchor: "end", color: ink.soft }),
  ]);
  return svgNode("g", { "aria-hidden": "true" }, ...lines, words(label, [8, 16], { color: ink.soft }));
}

/** The axis below: figures or words at their places, and what they are. */
export function bottomAxis(
  frame: Frame,
  { places, label }: { places: readonly { at: number; text: string }[]; label: string },
): SvgNode {
  const { x, y } = edgesOf(frame);
  const base = y[0];
  const texts = places.flatMap(({ at, text }) => [
    svgNode("path", { d: `M${Math.round(at * 100) / 100} ${base}v5`, stroke: ink.soft }),
    words(text, [at, base + 20], { anchor: "middle", color: ink.soft }),
  ]);
  const line = svgNode("path", { d: `M${x[0]} ${base}H${x[1]}`, stroke: ink.soft });
  const caption = words(label, [(x[0] + x[1]) / 2, base + 44], { anchor: "middle", color: ink.soft });
  return svgNode("g", { "aria-hidden": "true" }, line, ...texts, caption);
}

/** As many of a row of labels as fit: every first, second, fifth … one, and always the first. */
export function thinned<T>(labels: readonly T[], most: number): { label: T; at: number }[] {
  const every = Math.ceil(labels.length / most);
  return labels.flatMap((label, at) => (at % every === 0 ? [{ label, at }] : []));
}
