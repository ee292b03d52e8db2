import type { PictureSpan, SpanLook } from "./day-picture.ts";
import { columnOf, rowHeight } from "./day-rows.ts";
import { words } from "./frame.ts";
import { ink } from "./ink.ts";
import { place, type SvgNode, svgNode } from "./svg-node.ts";

/** The fillings that are made of lines and dots: hatching to the right, dots, and upright bars. */
const fillings = {
  hatched: { size: 7, d: "M-1 8 8 -1M-4.5 4.5 4.5 -4.5M2.5 11.5 11.5 2.5", width: 1 },
  dotted: { size: 6, d: "M3 3h.01", width: 2 },
  barred: { size: 5, d: "M2.5 0V5", width: 1 },
} as const;

/** How the other looks are filled. */
const plain: Readonly<Record<Exclude<SpanLook, keyof typeof fillings>, string>> = {
  place: ink.ground,
  bar: ink.words,
  maybe: ink.ground,
  outline: ink.ground,
};

/** The fillings as patterns, under ids of this drawing. */
export function spanPatterns(id: string): SvgNode {
  const patterns = Object.entries(fillings).map(([name, { size, d, width }]) =>
    svgNode(
      "pattern",
      { id: `${id}-${name}`, width: size, height: size, patternUnits: "userSpaceOnUse" },
      svgNode("rect", { width: size, height: size, fill: ink.ground, class: "chart-ground" }),
      svgNode("path", {
        ...{ d, stroke: ink.soft, "stroke-width": width, "stroke-linecap": "round", class: "chart-filling" },
      }),
    ),
  );
  return svgNode("defs", {}, ...patterns);
}

/** A span in its row: a box with its filling, its word if it has room, and an arrow where it goes on. */
export function spanDrawn(span: PictureSpan, top: number, id: string): SvgNode[] {
  const { from, to, look, word, opensBefore = false, opensAfter = false } = span;
  const [x, end] = [columnOf(from) + (opensBefore ? 0 : 2), columnOf(to + 1) - (opensAfter ? 0 : 2)];
  const isBar = look === "bar";
  const [y, height] = isBar || look === "maybe" ? [top + 7, rowHeight - 14] : [top + 3, rowHeight - 6];
  const filling = look in fillings ? `url(#${id}-${look})` : plain[look as keyof typeof plain];
  const isDashed = look === "maybe" || look === "outline";
  const box = svgNode("rect", {
    ...{ x, y, width: end - x, height, fill: filling, class: `chart-span chart-span-${look}` },
    ...{ stroke: ink.words, "stroke-width": 1.2, ...(isDashed ? { "stroke-dasharray": "4 3" } : {}) },
  });
  // About 7 units a letter: text is never measured.
  const fits = !isBar && look !== "maybe" && word.length * 7 + 10 <= end - x;
  const said = fits ? [words(word, [x + 6, y + height / 2 + 4], { halo: look in fillings })] : [];
  const arrows = [
    ...(opensBefore ? [arrow([x, y + height / 2], -1)] : []),
    ...(opensAfter ? [arrow([end, y + height / 2], 1)] : []),
  ];
  return [box, ...said, ...arrows];
}

function arrow([x, y]: readonly [number, number], way: 1 | -1): SvgNode {
  const d = `M${place(x)} ${place(y - 6)}L${place(x + 7 * way)} ${place(y)}L${place(x)} ${place(y + 6)}Z`;
  return svgNode("path", { d, fill: ink.words, class: "chart-arrow" });
}
