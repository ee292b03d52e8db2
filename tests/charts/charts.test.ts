import { describe, expect, it } from "vitest";
import type { Chart } from "../../src/charts/chart.ts";
import { controlChart } from "../../src/charts/control-chart.ts";
import { dwellChart } from "../../src/charts/dwell-chart.ts";
import { funnelChart } from "../../src/charts/funnel-chart.ts";
import { lookOf } from "../../src/charts/ink.ts";
import { intervalList } from "../../src/charts/interval-list.ts";
import type { SvgNode } from "../../src/charts/svg-node.ts";
import { svgText } from "../../src/charts/svg-text.ts";
import { trendChart } from "../../src/charts/trend-chart.ts";
import { dwell, gControl, intervals, picture, ratios, trend, uControl } from "./examples.ts";
import { funnel, wards } from "./funnel-example.ts";

const charts = { funnel, "u-chart": uControl, "g-chart": gControl, trend, dwell, intervals, ratios, picture };
const all = Object.entries(charts);

function nodesIn(node: SvgNode): SvgNode[] {
  return [node, ...node.children.flatMap((child) => (typeof child === "string" ? [] : nodesIn(child)))];
}
const focusables = ({ svg }: Chart) => nodesIn(svg).filter(({ attributes }) => attributes.tabindex === "0");
const shapesOf = (chart: Chart) =>
  new Set(nodesIn(chart.svg).flatMap(({ attributes }) => (attributes.class === "chart-mark" ? [attributes.d] : [])));
/** Whether two boxes lie on each other. */
function meets(a: SvgNode, b: SvgNode): boolean {
  const [p, q] = [a, b].map(({ attributes: at }) => [at.x, at.y, at.width, at.height].map(Number));
  const [ax = 0, ay = 0, aw = 0, ah = 0] = p ?? [];
  const [bx = 0, by = 0, bw = 0, bh = 0] = q ?? [];
  return ax < bx + bw && bx < ax + aw && ay < by + bh && by < ay + ah;
}
const dashesOf = (chart: Chart) =>
  nodesIn(chart.svg).flatMap(({ attributes: { class: name, ...line } }) =>
    name === "chart-line" ? [line["stroke-dasharray"]] : [],
  );

describe.each(all)("%s", (name, chart) => {
  it("is drawn as it was looked at", async () => {
    await expect(`${svgText(chart.svg)}\n`).toMatchFileSnapshot(`golden/${name}.svg`);
  });

  it("has its title and sentence as name and description", () => {
    const [title, description] = chart.svg.children;
    expect([title, description]).toMatchObject([
      { tag: "title", children: [chart.title] },
      { tag: "desc", children: [chart.sentence] },
    ]);
    const ids = nodesIn(chart.svg).flatMap(({ tag, attributes: { id } }) =>
      id === undefined || tag === "pattern" ? [] : [id],
    );
    expect(chart.svg.attributes["aria-labelledby"]?.split(" ")).toEqual(ids);
  });

  it("has a text for each point that can be focused", () => {
    const found = focusables(chart);
    expect(found.length).toBeGreaterThan(3);
    expect(found.map(({ attributes }) => attributes["aria-label"])).toEqual(chart.pointTexts);
    expect(new Set(chart.pointTexts).size).toBe(found.length);
  });

  it("has a table whose rows fill its columns, with nothing but figures, words and what is missing", () => {
    expect(chart.table.rows.length).toBeGreaterThan(0);
    for (const row of chart.table.rows) expect(row).toHaveLength(chart.table.columns.length);
    const cells = chart.table.rows.flat().filter((cell) => typeof cell === "number");
    expect(cells.every(Number.isFinite)).toBe(true);
    expect(svgText(chart.svg)).not.toMatch(/NaN|Infinity|undefined/);
  });

  it("keeps every place inside its drawing", () => {
    const [width, height] = [Number(chart.svg.attributes.width), Number(chart.svg.attributes.height)];
    for (const { tag, attributes, children } of nodesIn(chart.svg)) {
      const [x, y] = /translate\(([-\d.]+) ([-\d.]+)\)/.exec(attributes.transform ?? "")?.slice(1) ?? [
        attributes.x,
        attributes.y,
      ];
      if (x === undefined || y === undefined) continue;
      // About 7 units a letter: text is never measured, so its room must be enough.
      const reach = tag === "text" && attributes["text-anchor"] === "start" ? String(children[0]).length * 7 : 0;
      expect(Number(x), String(children[0])).toBeGreaterThanOrEqual(0);
      expect(Number(x) + reach, String(children[0])).toBeLessThanOrEqual(width + 8);
      expect(Number(y)).toBeGreaterThanOrEqual(0);
      expect(Number(y)).toBeLessThanOrEqual(height);
    }
  });
});

describe("what charts show", () => {
  it("a ward without days is in the table with its reason and not in the drawing", () => {
    expect(funnel.table.rows).toHaveLength(wards.length);
    expect(funnel.table.rows.at(-1)).toEqual(["6W", 0, 0, null, null, null, "There are no days, so there is no rate."]);
    expect(funnel.pointTexts.some((text) => text.startsWith("6W"))).toBe(false);
    expect(uControl.table.rows[6]?.slice(0, 2)).toEqual(["2025-07", null]);
  });

  it("points with open cultures are hollow and say so in words, and all others are filled", () => {
    for (const chart of [funnel, uControl, trend, intervals]) {
      const points = focusables(chart);
      const told = points.filter(({ attributes }) => attributes["aria-label"]?.includes("not final"));
      expect(told.length).toBeGreaterThan(0);
      for (const point of points) {
        const marks = nodesIn(point).filter(({ attributes }) => attributes.class === "chart-mark");
        const isHollow = marks.some(({ attributes }) => attributes.fill === "#ffffff");
        expect([point.attributes["aria-label"], isHollow]).toEqual([
          point.attributes["aria-label"],
          told.includes(point),
        ]);
      }
      expect(JSON.stringify(chart.table.rows)).toContain("not final: ");
    }
  });

  it("wards outside and inside, and points of rules, differ by shape", () => {
    expect(shapesOf(funnel).size).toBe(3);
    expect(shapesOf(gControl).size).toBe(3);
    expect(shapesOf(ratios).size).toBe(3);
    expect(funnel.pointTexts.find((text) => text.startsWith("ICU"))).toBe(
      "ICU: 19 CAUTIs in 2,410 catheter-days, 7.88 CAUTIs per 1,000 catheter-days, 95% limits 1.45 to 6.51, outside the 95% limits, not final: 1 open",
    );
  });

  it("series differ by dash and shape, and there are no more than can be told apart", () => {
    expect(new Set(dashesOf(trend)).size).toBe(3);
    expect(shapesOf(trend).size).toBe(3);
    expect(new Set(dashesOf(dwell)).size).toBe(2);
    const looks = [0, 1, 2, 3, 4, 5].map(lookOf);
    expect([new Set(looks.map(({ dash }) => dash)).size, new Set(looks.map(({ shape }) => shape)).size]).toEqual([
      6, 6,
    ]);
    expect(() => lookOf(6)).toThrow("a chart tells 6 series apart, not 7");
  });

  it("spans of days differ by their filling, lie beside each other and say where they go on", () => {
    const spans = nodesIn(picture.svg).filter(({ attributes }) => attributes.class?.startsWith("chart-span"));
    expect(
      new Set(spans.map(({ attributes: { fill, stroke, ...look } }) => `${fill} ${look["stroke-dasharray"]}`)).size,
    ).toBe(6);
    const overlaps = spans.flatMap((a) => spans.filter((b) => a !== b && meets(a, b)));
    expect(overlaps).toEqual([]);
    expect(nodesIn(picture.svg).filter(({ attributes }) => attributes.class === "chart-arrow")).toHaveLength(3);
    const row = picture.table.rows[6];
    expect(row).toEqual([
      "4 Mar: Date of event",
      "ICU; 3E",
      "in place",
      "Temperature 38.4 °C on 4 Mar; Suprapubic tenderness on 4 Mar",
      null,
      "window; timeframe; bloodstream",
    ]);
  });

  it("a missing value interrupts its line", () => {
    const line = nodesIn(trend.svg).find(({ attributes }) => attributes["stroke-dasharray"] === "8 4");
    expect(line?.attributes.d?.match(/M/g)).toHaveLength(2);
  });

  it("what would be markup is escaped", () => {
    expect(svgText(trend.svg)).toContain("3W &lt;new&gt;");
  });

  it("nothing at all is drawn without a fault", () => {
    const head = { id: "none", title: "None", sentence: "Nothing was counted." };
    const line = { name: "95%", places: [] };
    const drawn = [
      funnelChart({
        ...head,
        unit: "u",
        daysUnit: "d",
        eventsUnit: "e",
        target: 0,
        targetName: "t",
        inner: line,
        outer: line,
        wards: [],
      }),
      controlChart({
        ...head,
        unit: "u",
        pointsAre: "Month",
        decimals: 1,
        center: 0,
        centerName: "c",
        median: null,
        points: [],
      }),
      trendChart({ ...head, unit: "u", decimals: 1, periods: [], periodsAre: "Month", series: [] }),
      trendChart({
        ...head,
        unit: "u",
        decimals: 1,
        periods: ["a"],
        periodsAre: "Month",
        series: [{ name: "x", values: [null] }],
      }),
      dwellChart({ ...head, series: [{ name: "x", steps: [], median: null }] }),
      intervalList({ ...head, unit: "u", decimals: 1, scale: "log", reference: 1, referenceName: "r", rows: [] }),
    ];
    for (const { svg } of drawn) expect(svgText(svg)).not.toMatch(/NaN|Infinity/);
  });
});
