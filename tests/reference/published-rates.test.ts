import { describe, expect, it } from "vitest";
import { pool } from "../../src/domain/counting/pool.ts";
import { catheterDayRate } from "../../src/domain/counting/rates.ts";
import { expectPrinted } from "./expect-printed.ts";
import { readRows } from "./read-data.ts";

/** A column of a row as a number; a missing or empty one fails the test. */
function figure(row: Record<string, string>, column: string): number {
  const text = row[column];
  if (text === undefined || text === "") throw new Error(`no ${column} in the row`);
  return Number(text);
}

function rateOf(row: Record<string, string>, columns: { events: string; days: string }): number {
  const rate = catheterDayRate({ events: figure(row, columns.events), catheterDays: figure(row, columns.days) });
  if (rate.value === null) throw new Error(rate.reason);
  return rate.value;
}

describe("published ICU rates, Korean J Healthc Assoc Infect Control Prev, reports of 2018-2021", () => {
  const rows = readRows("icu-rates-published.csv");
  const columns = { events: "infections", days: "device_days" };

  it("has its 45 rows", () => {
    expect(rows).toHaveLength(45);
  });

  it.each(rows.map((row) => [`${row.period} ${row.device} ${row.icu_type}`, row] as const))(
    "gives the printed rate and its log-Wald limits: %s",
    (_title, row) => {
      const rate = rateOf(row, columns);
      expectPrinted(rate, figure(row, "rate_per_1000"), 2);
      const factor = Math.exp(1.96 / Math.sqrt(figure(row, "infections")));
      expectPrinted(rate / factor, figure(row, "ci_lower"), 2);
      expectPrinted(rate * factor, figure(row, "ci_upper"), 2);
    },
  );
});

describe("published US pooled means of 2013, Dudeck et al., Am J Infect Control 2015;43:206-221, table 5", () => {
  const rows = readRows("us-2013-pooled-means.csv");

  it("has its 23 rows", () => {
    expect(rows).toHaveLength(23);
  });

  it.each(rows.map((row) => [`${row.group}, ${row.location_type}`, row] as const))(
    "gives the printed pooled mean: %s",
    (_title, row) => {
      expectPrinted(rateOf(row, { events: "cauti", days: "catheter_days" }), figure(row, "pooled_mean"), 1);
    },
  );

  it("pools its 19 critical care rows by sums (26,063 / 11,220,867, summed by an independent program)", () => {
    const critical = rows
      .filter((row) => row.group === "Critical care")
      .map((row) => ({ events: figure(row, "cauti"), catheterDays: figure(row, "catheter_days") }));
    expect(critical).toHaveLength(19);
    const sums = pool(["events", "catheterDays"], critical);
    expect(sums).toEqual({ events: 26_063, catheterDays: 11_220_867 });
    expect(catheterDayRate(sums).value).toBeCloseTo(2.3227260424706935, 12);
  });
});
