import { describe, expect, it } from "vitest";
import { simulateAlarms } from "../../../scripts/false-alarms/simulate.ts";
import { falseAlarmTable, simulation } from "../../../src/domain/statistics/false-alarm-table.ts";
import { falseAlarms } from "../../../src/domain/statistics/false-alarms.ts";

const short = 250;
const rules = ["outside-limits", "long-run", "few-crossings"] as const;

describe("false alarms of control charts where nothing but chance is at work", () => {
  it.each(["u", "laney", "g", "t"] as const)(
    `${short} further series of each length and rate agree with the table within chance: %s`,
    (chart) => {
      const rows = falseAlarmTable.filter(([kind]) => kind === chart);
      expect(new Set(rows.map(([, , perYear]) => perYear))).toEqual(new Set([0.5, 2, 6, 20, 60]));
      for (const [, months, perYear, drawn, ...alarms] of rows) {
        const found = simulateAlarms({ chart, months, perYear, series: short, seed: 7 });
        const isNear = (part: number, whole: number, ofPart: number, ofWhole: number) => {
          if (whole === 0 || ofWhole === 0) return true;
          const pooled = (part + ofPart) / (whole + ofWhole);
          // Five standard errors of the difference: one of 240 comparisons fails in about 7,000 runs of other seeds.
          return (
            Math.abs(part / whole - ofPart / ofWhole) <=
            5 * Math.sqrt(pooled * (1 - pooled) * (1 / whole + 1 / ofWhole))
          );
        };
        expect(isNear(found.drawn, short, drawn, simulation.series), `${chart} ${months} ${perYear}: drawn`).toBe(true);
        for (const [at, rule] of rules.entries())
          expect(
            isNear(found[rule], found.drawn, alarms[at] ?? 0, drawn),
            `${chart} ${months} ${perYear}: ${rule}`,
          ).toBe(true);
      }
    },
  );

  it("the same seed gives the very row of the table", () => {
    const at = falseAlarmTable.findIndex(
      ([chart, months, perYear]) => chart === "g" && months === 24 && perYear === 0.5,
    );
    const [, , , drawn, outside] = falseAlarmTable[at] ?? [];
    const found = simulateAlarms({
      chart: "g",
      months: 24,
      perYear: 0.5,
      series: simulation.series,
      seed: simulation.seed + at,
    });
    expect([found.drawn, found["outside-limits"]]).toEqual([drawn, outside]);
  });

  it("runs about the median raise fewer alarms than the 5% they are meant to, at every rate on charts of rates", () => {
    for (const [chart, months, perYear, drawn, , run, crossings] of falseAlarmTable)
      if (chart === "u") expect(Math.max(run, crossings) / drawn, `${months} ${perYear}`).toBeLessThan(0.05);
  });

  it("a chart takes the nearest conditions, and leaves off a rule that chance raises too often", () => {
    expect(falseAlarms("u", { events: 4, months: 22 })).toMatchObject({ months: 24, perYear: 2, ...simulation });
    expect(falseAlarms("u", { events: 0, months: 12 })).toMatchObject({ months: 12, perYear: 0.5 });
    expect(falseAlarms("u", { events: 900, months: 60 })).toMatchObject({ months: 60, perYear: 60 });
    const used = (chart: "u" | "laney" | "g" | "t", events: number, months: number) =>
      falseAlarms(chart, { events, months }).isUsed["outside-limits"];
    // 51.7% and 38.7% against twice 3.2% and twice 15.0%; 5.0% and 8.0% against twice 3.2% and twice 6.3%.
    expect([used("laney", 2, 12), used("laney", 100, 60), used("laney", 20, 12), used("laney", 120, 24)]).toEqual([
      ...[false, false, true, true],
    ]);
    for (const chart of ["u", "g", "t"] as const)
      for (const events of [1, 4, 12, 40, 120]) expect(used(chart, events, 24), `${chart} ${events}`).toBe(true);
  });
});
