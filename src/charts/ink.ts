import type { SvgNode } from "./svg-node.ts";
import { svgNode } from "./svg-node.ts";

/** Colors on white paper; a page may set others by the classes `chart-…`. Nothing is told by color alone. */
export const ink = {
  words: "#1f2426",
  soft: "#51595b",
  rule: "#cfccc0",
  signal: "#9a2f16",
  ground: "#ffffff",
} as const;

/** The series of a chart: each has its own dash, shape and color. Every shape has an inside, to be drawn hollow. */
export const seriesLooks = [
  { shape: "circle", dash: "none", color: "#0b5560" },
  { shape: "square", dash: "8 4", color: "#67336f" },
  { shape: "triangle", dash: "2 3", color: "#744700" },
  { shape: "diamond", dash: "10 3 2 3", color: "#2c5f2f" },
  { shape: "plus", dash: "5 2", color: "#454f63" },
  { shape: "pentagon", dash: "1 5", color: "#9a2f16" },
] as const;

/** A look of a series. */
export type SeriesLook = (typeof seriesLooks)[number];

/** The look of the series at a place; throws a plain Error beyond the last, since lines would look alike. */
export function lookOf(at: number): SeriesLook {
  const look = seriesLooks[at];
  if (!look) throw new Error(`a chart tells ${seriesLooks.length} series apart, not ${at + 1}`);
  return look;
}

/** The shapes of points. */
export type MarkShape = SeriesLook["shape"] | "ring";

const outlines: Readonly<Record<MarkShape, string>> = {
  circle: "M-4.5 0a4.5 4.5 0 1 0 9 0a4.5 4.5 0 1 0 -9 0Z",
  ring: "M-4.5 0a4.5 4.5 0 1 0 9 0a4.5 4.5 0 1 0 -9 0Z",
  square: "M-4.2 -4.2H4.2V4.2H-4.2Z",
  triangle: "M0 -5.5 5.2 4H-5.2Z",
  diamond: "M0 -6 6 0 0 6 -6 0Z",
  plus: "M-1.8 -5H1.8V-1.8H5V1.8H1.8V5H-1.8V1.8H-5V-1.8H-1.8Z",
  pentagon: "M0 -5.4 5.2 -1.6 3.2 4.5H-3.2L-5.2 -1.6Z",
};

/** A point's mark: a shape of about 10 units around a place; hollow where its figure is not final. */
export function mark(
  shape: MarkShape,
  [x, y]: readonly [number, number],
  color: string,
  { isHollow = false }: { readonly isHollow?: boolean } = {},
): SvgNode {
  const paint =
    isHollow || shape === "ring"
      ? { fill: ink.ground, stroke: color, "stroke-width": 2 }
      : { fill: color, stroke: ink.ground, "stroke-width": 1 };
  const at = svgNode("path", { d: outlines[shape], ...paint, class: "chart-mark" });
  return svgNode("g", { transform: `translate(${Math.round(x * 100) / 100} ${Math.round(y * 100) / 100})` }, at);
}

/** A point that can be focused and tells its text to whoever asks. */
export function focusable(text: string, ...children: SvgNode[]): SvgNode {
  const attributes = { class: "chart-point", tabindex: "0", role: "img", "aria-label": text };
  return svgNode("g", attributes, svgNode("title", {}, text), ...children);
}
