import { expect, it } from "vitest";
import { funnelLines } from "../../src/charts/funnel-lines.ts";
import type { SvgNode } from "../../src/charts/svg-node.ts";
import { funnel } from "./funnel-example.ts";

function nodesIn(node: SvgNode): SvgNode[] {
  return [node, ...node.children.flatMap((child) => (typeof child === "string" ? [] : nodesIn(child)))];
}
type Place = readonly [x: number, y: number];
const placesOf = ({ attributes: { d = "" } }: SvgNode): Place[] =>
  [...d.matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
const limitsIn = (nodes: readonly SvgNode[]) =>
  nodes
    .filter(({ attributes: { class: name, "stroke-dasharray": dash } }) => name === "chart-line" && dash)
    .map(placesOf);

it("limits go from one end of the axis to the other, and each unit has its counts beside it", () => {
  // The plot's edges, and half a mark at the left.
  const [left, right] = [66 + 10, 760 - 150];
  const limits = limitsIn(nodesIn(funnel.svg));
  expect(limits).toHaveLength(4);
  for (const [at, places] of limits.entries()) {
    const across = places.map(([x]) => x);
    expect(Math.max(...across)).toBeCloseTo(right, 1);
    // The upper limits of 99.8% come into the plot at its top edge.
    if (at === 3) expect(Math.min(...places.map(([, y]) => y))).toBe(38);
    else expect(Math.min(...across)).toBeCloseTo(left, 1);
  }
  const written = nodesIn(funnel.svg).flatMap(({ tag, children: [text] }) => (tag === "text" ? [text] : []));
  for (const label of ["4E 15/1,985", "ICU 19/2,410", "CCU 0/2,210", "3E 3/1,210", "REHAB 1/150"])
    expect(written).toContain(label);
});

it("a limit that leaves the plot and comes back is cut at the edge itself", () => {
  const places = [
    { days: 0, lower: 0, upper: 4 },
    { days: 10, lower: 0, upper: 14 },
    { days: 20, lower: 0, upper: 14 },
    { days: 30, lower: 0, upper: 9 },
  ];
  const head = { id: "f", title: "F", sentence: "S", unit: "u", daysUnit: "d", eventsUnit: "e", targetName: "t" };
  const line = { name: "95%", places };
  const input = { ...head, target: 5, inner: line, outer: { name: "99.8%", places: [] }, wards: [] };
  const [, upper] = limitsIn(funnelLines(input, { x: (days) => days, y: (rate) => 100 - rate, top: 10 }));
  expect(upper).toEqual([
    [0, 96],
    [6, 90],
    [28, 90],
    [30, 91],
  ]);
});
