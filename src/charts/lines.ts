import { place, type SvgNode, svgNode } from "./svg-node.ts";

/** A place of the drawing, or null where a line is interrupted because a figure is missing. */
export type LinePlace = readonly [number, number] | null;

/** How a line is drawn. */
export interface LineLook {
  readonly color: string;
  /** Lengths of dashes and gaps, or `none`. */
  readonly dash: string;
  readonly width: number;
}

/** A line through places; it is interrupted where one is missing. */
export function straightLine(places: readonly LinePlace[], look: LineLook): SvgNode {
  return line(places, look, ([x, y]) => `L${place(x)} ${place(y)}`);
}

/** A line that keeps its height until the next place and jumps there. */
export function stepLine(places: readonly LinePlace[], look: LineLook): SvgNode {
  return line(places, look, ([x, y]) => `H${place(x)}V${place(y)}`);
}

function line(
  places: readonly LinePlace[],
  look: LineLook,
  onward: (to: readonly [number, number]) => string,
): SvgNode {
  let d = "";
  let before: LinePlace = null;
  for (const to of places) {
    if (to !== null) d += before === null ? `M${place(to[0])} ${place(to[1])}` : onward(to);
    before = to;
  }
  const dash = look.dash === "none" ? {} : { "stroke-dasharray": look.dash };
  const paint = { fill: "none", stroke: look.color, "stroke-width": look.width, ...dash, class: "chart-line" };
  return svgNode("path", { d: d || "M0 0", ...paint });
}
