import type { BaselineOrigin, PooledBaseline } from "./baseline.ts";

const origin: BaselineOrigin = {
  id: "us-2013",
  name: "US pooled means of 2013",
  source: "Dudeck et al., Am J Infect Control 2015;43:206-221, table 5",
  year: "2013",
  definition:
    "US definition before 2015: yeasts and counts below 100,000 CFU/ml were included, so newer rates are lower",
  population: "US hospitals that reported CAUTIs in 2013, critical care and oncology locations",
  edition: "1",
};

/** Type of location, infections, catheter-days, and whether the table's heading was restored from its order. */
const rows: readonly (readonly [string, number, number, boolean])[] = [
  ["Burn", 369, 76_619, false],
  ["Medical, major teaching", 2_696, 775_684, true],
  ["Medical, all other", 1_703, 833_658, true],
  ["Medical cardiac", 1_494, 658_345, false],
  ["Medical/surgical, major teaching", 2_577, 967_282, true],
  ["Medical/surgical, all other <=15 beds", 2_429, 1_910_118, true],
  ["Medical/surgical, all other >15 beds", 4_666, 2_758_180, true],
  ["Neurologic", 530, 117_424, false],
  ["Neurosurgical", 2_482, 470_403, false],
  ["Pediatric cardiothoracic", 39, 33_545, false],
  ["Pediatric medical", 30, 8_891, false],
  ["Pediatric medical/surgical", 402, 162_875, false],
  ["Pediatric surgical", 0, 1_475, false],
  ["Prenatal", 0, 1_150, false],
  ["Respiratory", 34, 15_836, false],
  ["Surgical, major teaching", 1_989, 580_420, true],
  ["Surgical, all other", 912, 445_830, true],
  ["Surgical cardiothoracic", 1_715, 942_852, false],
  ["Trauma", 1_996, 460_280, false],
  ["Oncology critical care", 57, 34_198, false],
  ["Oncology step-down", 33, 12_453, false],
  ["General hematology/oncology ward", 338, 161_366, false],
  ["Hematopoietic stem cell transplant ward", 59, 26_765, false],
];

/**
 * The published US pooled means of 2013 by type of location, as sums of infections and catheter-days. Old data of an
 * older definition: for practice and for comparison over time, no benchmark for data of today. Utilization was not read.
 */
export const us2013PooledMeans: PooledBaseline = {
  kind: "pooled",
  origin,
  by: "ward-type",
  rates: rows.map(([key, infections, catheterDays, isInferred]) => ({
    ...{ key, infectionsPerCatheterDay: infections / catheterDays, utilization: null },
    note: isInferred ? "The heading of this row was restored from the order of the table." : null,
  })),
};
