import { describe, expect, it } from "vitest";
import type { Problem } from "../../../shared/problems.ts";
import type { Baseline, ModelBaseline, ModelTerm, PooledRate } from "../../../src/domain/baselines/baseline.ts";
import { baselineFaults } from "../../../src/domain/baselines/baseline-faults.ts";
import { modelFromRows } from "../../../src/domain/baselines/model-from-rows.ts";
import { pooledFromRows } from "../../../src/domain/baselines/pooled-from-rows.ts";
import { readNumber } from "../../../src/domain/baselines/read-number.ts";
import { us2013PooledMeans } from "../../../src/domain/baselines/us-2013-pooled-means.ts";
import { longTermAcuteCare } from "./long-term-acute-care.ts";

const { origin } = us2013PooledMeans;
const said = (baseline: Baseline) => baselineFaults(baseline).map(({ pointer, detail }) => `${pointer} ${detail}`);
const rates = (...list: Partial<PooledRate>[]): Baseline => ({
  ...us2013PooledMeans,
  rates: list.map((rate) => ({ key: "Burn", infectionsPerCatheterDay: 0.001, utilization: 0.5, note: null, ...rate })),
});
const model = (...terms: ModelTerm[]): ModelBaseline => ({ ...longTermAcuteCare, terms });
const category = (name: string, from: number | null = null, below: number | null = null) => ({
  ...{ name, coefficient: 0, standardError: null },
  band: from === null && below === null ? null : { from, below },
});
const faultsOf = (work: () => unknown): string[] => {
  try {
    work();
  } catch (error) {
    return (error as Problem).faults.map(({ code, pointer, detail }) => `${code} ${pointer} ${detail}`);
  }
  return [];
};

describe("faults of a baseline", () => {
  it("the shipped table and the published model have none", () => {
    expect([said(us2013PooledMeans), said(longTermAcuteCare)]).toEqual([[], []]);
  });

  it.each([
    [rates({}, {}), "/rates/1/key Burn stands in the baseline more than once."],
    [rates({ key: " " }), "/rates/0/key A rate does not say for which wards it is."],
    [
      rates({ infectionsPerCatheterDay: null, utilization: null }),
      "/rates/0 Burn has neither a rate nor a utilization.",
    ],
    [
      rates({ infectionsPerCatheterDay: -0.1 }),
      "/rates/0/infectionsPerCatheterDay Burn has a rate of -0.1 infections a catheter-day.",
    ],
    [rates({ utilization: 1.2 }), "/rates/0/utilization Burn has a utilization of 1.2, which is not from 0 to 1."],
    [
      rates({ utilization: Number.NaN }),
      "/rates/0/utilization Burn has a utilization of NaN, which is not from 0 to 1.",
    ],
    [
      { ...us2013PooledMeans, origin: { ...origin, definition: "" } },
      "/origin/definition The baseline does not say its definition.",
    ],
    [{ ...longTermAcuteCare, intercept: Number.NaN }, "/intercept The model has no intercept."],
    [model({ factor: "beds", categories: [] }), "/terms/0/categories beds has no categories."],
    [model({ factor: "", categories: [category("a")] }), "/terms/0/factor A term has no name."],
    [
      model({ factor: "beds", categories: [category("a")] }, { factor: "beds", categories: [category("a")] }),
      "/terms/1/factor beds is a term more than once.",
    ],
    [
      model({ factor: "beds", categories: [category("few"), category("few")] }),
      "/terms/0/categories/1 beds has the category few more than once.",
    ],
    [
      model({ factor: "beds", categories: [{ ...category("few"), coefficient: Number.NaN }] }),
      "/terms/0/categories/0 beds, few has no coefficient.",
    ],
    [
      model({ factor: "beds", categories: [category("few", null, 10), category("many", 12)] }),
      "/terms/0/categories The bands of beds do not meet: one ends at 10, the next begins at 12.",
    ],
    [
      model({ factor: "beds", categories: [category("few", null, 10), category("many", 8)] }),
      "/terms/0/categories The bands of beds do not meet: one ends at 10, the next begins at 8.",
    ],
    [
      model({ factor: "beds", categories: [category("few", 1, null), category("many", 8)] }),
      "/terms/0/categories The bands of beds do not meet: one ends at no end, the next begins at 8.",
    ],
    [
      model({ factor: "beds", categories: [category("few", null, 10), category("unknown")] }),
      "/terms/0/categories beds has categories with a band and some without.",
    ],
    [
      model({ factor: "beds", categories: [category("few", 10, 10)] }),
      "/terms/0/categories beds has a band from 10 to 10.",
    ],
  ] as const)("%#: %s", (baseline, expected) => {
    expect(said(baseline)).toEqual([expected]);
  });
});

describe("rates from typed rows", () => {
  it("take counts before printed figures", () => {
    const { rates: found } = pooledFromRows(origin, [
      {
        ward_type: "A",
        infections: "4",
        catheter_days: "2000",
        patient_days: "5000",
        rate_per_1000: "2.1",
        note: " new ",
      },
      { ward_type: "B", rate_per_1000: "1.7", utilization: "0.45" },
      { ward_type: "C", catheter_days: "10", patient_days: "40" },
    ]);
    expect(found).toEqual([
      { key: "A", infectionsPerCatheterDay: 0.002, utilization: 0.4, note: "new" },
      { key: "B", infectionsPerCatheterDay: 0.0017, utilization: 0.45, note: null },
      { key: "C", infectionsPerCatheterDay: null, utilization: 0.25, note: null },
    ]);
  });

  it("tell all faults at once, by row and column", () => {
    const rows: Record<string, string>[] = [
      { ward_type: "A", rate_per_1000: "1,7" },
      { ward_type: "B", infections: "-1", catheter_days: "9" },
    ];
    expect(faultsOf(() => pooledFromRows(origin, rows))).toEqual([
      'baseline-unusable /rates/0/rate_per_1000 rate_per_1000 must be a number of zero or more, not "1,7".',
      'baseline-unusable /rates/1/infections infections must be a number of zero or more, not "-1".',
    ]);
    expect(faultsOf(() => pooledFromRows(origin, [{ rate_per_1000: "1" }]))).toEqual([
      "baseline-unusable /rates/0/key A rate does not say for which wards it is.",
    ]);
  });

  it.each([
    ["12", 12],
    [" -0.5 ", -0.5],
    ["", null],
    [undefined, null],
    ["1e3", Number.NaN],
    ["0x10", Number.NaN],
    ["Infinity", Number.NaN],
  ])("a cell of %j is %d", (text, value) => expect(readNumber(text)).toBe(value));
});

describe("a model from typed rows", () => {
  it("tells missing, repeated and unreadable parts", () => {
    const of = (...rows: Record<string, string>[]) => faultsOf(() => modelFromRows(origin, "infections", rows));
    const intercept = { term: "intercept", coefficient: "-7" };
    expect(of()).toEqual(["baseline-unusable /rows The model has no intercept."]);
    expect(of(intercept, intercept)).toEqual(["baseline-unusable /rows The model has more than one intercept."]);
    expect(of(intercept, { term: "beds", category: "few" })).toEqual([
      "baseline-unusable /rows/1/coefficient beds has a row without a coefficient.",
    ]);
    expect(of(intercept, { term: "beds", category: "few", coefficient: "0", from: "ten" })).toEqual([
      'baseline-unusable /rows/1/from from is no number: "ten".',
    ]);
    const few = { term: "beds", category: "few", coefficient: "0.2" };
    expect(of(intercept, few, few)).toEqual([
      "baseline-unusable /terms/0/categories/1 beds has the category few more than once.",
    ]);
    expect(of(intercept, few)).toEqual([]);
  });
});
