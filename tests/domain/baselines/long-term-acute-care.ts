import { modelFromRows } from "../../../src/domain/baselines/model-from-rows.ts";

/**
 * The 2022 baseline of CAUTIs in long-term acute care, as read in a copy of the published table (to be checked again
 * against the original).
 */
export const longTermAcuteCare = modelFromRows(
  {
    id: "us-2022-long-term-acute-care",
    name: "US 2022 baseline, long-term acute care",
    source: 'CDC, 2022 baseline, table "CAUTI risk adjustment, long-term acute care hospitals", read in a copy',
    year: "2022",
    definition: "CDC Patient Safety Component Manual, chapter 7, 2022",
    population: "US long-term acute care hospitals that reported in 2022",
    edition: "1",
  },
  "infections",
  [
    { term: "intercept", coefficient: "-7.8086", standard_error: "0.2067" },
    { term: "average length of stay", category: "1 to under 22.2 days", below: "22.2", coefficient: "0" },
    {
      ...{ term: "average length of stay", category: "22.2 to under 27.8 days", from: "22.2", below: "27.8" },
      ...{ coefficient: "0.5783", standard_error: "0.2094" },
    },
    {
      ...{ term: "average length of stay", category: "27.8 days or more", from: "27.8" },
      ...{ coefficient: "1.1001", standard_error: "0.1971" },
    },
    {
      ...{ term: "share of beds that are intensive care", category: "under 0.103", below: "0.103" },
      ...{ coefficient: "0.3579", standard_error: "0.1097" },
    },
    { term: "share of beds that are intensive care", category: "0.103 or more", from: "0.103", coefficient: "0" },
  ],
);
