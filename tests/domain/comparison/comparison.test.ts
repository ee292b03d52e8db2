import { describe, expect, it } from "vitest";
import { chartInput } from "../../../shared/chart-input.ts";
import { drawChart } from "../../../src/charts/draw-chart.ts";
import { cautionsOf, chartsOf } from "../../../src/domain/comparison/compare-wards.ts";
import { totalsOf } from "../../../src/domain/comparison/comparison-facts.ts";
import { byId, facts, ward } from "./compared-facts.ts";

const six = [
  ward("2E", [[0, 100]]),
  ward("2W", [
    [1, 150],
    [0, 150],
  ]),
  ward("3E", [[4, 200]]),
  ward("3W", [[1, 1], ...Array(11).fill([0, 3])]),
  ward("4E", [[null, 80]]),
  ward("4W", [[0, 0]]),
];
describe("charts of a comparison", () => {
  const charts = chartsOf(facts(six));

  it("are what the contract says, each with one sentence on what it does not show, and can be drawn", () => {
    expect(charts.map(({ input }) => input.id)).toEqual([
      ...["funnel", "order", "utilization", "rates", "months", "laney", "gaps", "dwell"],
    ]);
    for (const chart of charts) {
      expect(chartInput.parse(chart)).toEqual(chart);
      expect(chart.kind).not.toBe("absent");
      expect(chart.input.sentence).toMatch(/\b(not|no|neither|little)\b/);
      expect(drawChart(chart)?.table.rows.length).toBeGreaterThan(0);
    }
  });

  it("give wards without a rate their reason, and never a zero", () => {
    const funnel = byId(charts, "funnel");
    if (funnel.kind !== "funnel") throw new Error(funnel.kind);
    expect(funnel.input.wards.slice(4)).toMatchObject([
      { name: "4E", rate: null, reason: "The unit was not under surveillance in this period." },
      {
        name: "4W",
        rate: null,
        reason: "There are no catheter-days in the months under surveillance, so there is no rate.",
      },
    ]);
    // 48 infections of 3E in 2,400 days: twice the pooled rate of 55 in 5,434; by hand.
    expect(funnel.input.target).toBeCloseTo((55 / 5_434) * 1_000, 12);
    // 34 to 2,400 days: both pairs of limits are drawn over the whole axis, to 1.1 times the largest.
    for (const { places } of [funnel.input.inner, funnel.input.outer])
      expect([places[0]?.days, places.at(-1)?.days]).toEqual([34, expect.closeTo(2_640, 9)]);
    expect(funnel.input.wards.map(({ events, days }) => [events, days])).toEqual([
      ...[
        [0, 1_200],
        [6, 1_800],
        [48, 2_400],
      ],
      ...[
        [1, 34],
        [null, 0],
        [0, 0],
      ],
    ]);
    expect(funnel.input.wards.map(({ position }) => position).slice(0, 3)).toEqual([
      ...["outside-outer", "outside-outer", "outside-outer"],
    ]);
  });

  it("order wards by the shrunken rate: the smallest ward has the highest raw rate and does not come first", () => {
    const order = byId(charts, "order");
    if (order.kind !== "intervals") throw new Error(order.kind);
    const raw = six.map(({ code, months: own }) => ({ code, ...totalsOf(own) }));
    const small = raw.find(({ code }) => code === "3W");
    expect((small?.infections ?? 0) / (small?.watchedDays ?? 1)).toBeGreaterThan(48 / 2_400);
    expect(order.input.rows.map(({ name }) => name)).toEqual(["3E", "3W", "2W", "2E", "4E", "4W"]);
    for (const { estimate, lower, upper } of order.input.rows.slice(0, 4))
      expect([lower ?? 9, estimate ?? 9].every((value, place) => value <= ([estimate, upper][place] ?? 0))).toBe(true);
  });

  it("give equal adjusted rates as one sentence, not as equal rows", () => {
    // Six units with 1 or 2 infections in equal days: less spread than chance.
    const alike = Array.from({ length: 6 }, (_, n) => ward(`W${n}`, [[n % 2, 400], ...Array(11).fill([0, 400])]));
    const order = byId(chartsOf(facts([...alike, ward("4E", [[null, 80]])])), "order");
    expect(order.kind).toBe("absent");
    // 3 infections in 6 x 4,800 days: 0.10; limits by chi-square quantiles, 6 degrees of freedom: 1.237 / 2 and 14.449 / 2.
    expect(order.input.sentence).toBe(
      "The 6 units differ no more than chance alone makes them, so all have one rate: 0.10 CAUTIs per 1,000 catheter-days (95% interval 0.02 to 0.25).",
    );
  });

  it("say how many units chance alone puts outside, counted and not assumed", () => {
    // Twenty units at 0.5 expected: 2 or more lie above the interpolated limit of 1.86, with probability 0.0902 each.
    const few = Array.from({ length: 20 }, (_, n) => ward(`W${n}`, [[n % 2, 100], ...Array(11).fill([0, 100])]));
    const { notes } = byId(chartsOf(facts(few)), "funnel");
    expect(notes).toContain("No unit is outside the 95% limits; chance alone puts about 1.8 of 20 there.");
  });

  it("draw at most six lines and five curves, and name the wards that are left out", () => {
    const many = facts(Array.from({ length: 9 }, (_, n) => ward(`W${n}`, [[1, 100 + n]])));
    const chosen = many.wards[0] ?? null;
    const [utilization, dwell] = ["utilization", "dwell"].map((id) => byId(chartsOf({ ...many, chosen }), id));
    if (utilization?.kind !== "trend" || dwell?.kind !== "dwell") throw new Error("other charts");
    expect(utilization.input.series.map(({ name }) => name)).toEqual(["W0", "W8", "W7", "W6", "W5", "all units"]);
    expect(utilization.notes[0]).toContain("not drawn alone: W1, W2, W3, W4.");
    expect(dwell.input.series.map(({ name }) => name)).toEqual(["W0", "W8", "W7", "W6", "W5"]);
  });

  it("that cannot be drawn say why", () => {
    const nothing = chartsOf(facts([ward("2E", [[null, 10]])]));
    const absent = nothing.filter(({ kind }) => kind === "absent").map(({ input }) => [input.id, input.sentence]);
    expect(absent).toEqual([
      ["funnel", "Fewer than two units have a rate, so there is nothing to compare."],
      ["order", "Fewer than two units have a rate, so there is no order."],
      ["rates", "No unit has catheter-days in a month under surveillance, so there is no rate."],
      ["months", "No month was under surveillance, so no infections were counted."],
      ["gaps", "Fewer than two gaps between infections make no chart."],
    ]);
    expect(byId(chartsOf(facts([ward("2E", [[0, 10]]), ward("2W", [[0, 9]])])), "funnel").input.sentence).toBe(
      "No CAUTI was counted on these units, so no limits can be drawn.",
    );
    expect(byId(chartsOf(facts([ward("2E", [[0, 0]])])), "utilization").kind).toBe("absent");
    expect(new Set(chartsOf(facts([])).map(({ kind }) => kind))).toEqual(new Set(["absent"]));
  });
});

it("cautions speak of mixed types, of many pairs, of open cultures, of what is not counted and of a month that lasts", () => {
  const mixed = [ward("2E", [[0, 9]]), { ...ward("2W", [[0, 9]]), type: null }, ward("3E", [[0, 9]])];
  const [first, ...others] = mixed;
  if (!first) throw new Error("there are wards");
  const open = { ...first, months: first.months.map((one) => ({ ...one, openCases: [7, 8] })) };
  const notCounted = [{ code: "4S", count: 1 }];
  const said = cautionsOf(facts([open, ...others], { type: null, notCounted, complete: false })).join(" ");
  for (const part of ["Units of 2 types", "3 pairs", "2 cultures are open", "1 on 4S, not under", "not over", "wide"])
    expect(said).toContain(part);
  expect(cautionsOf(facts([first]))).toHaveLength(2);
});
