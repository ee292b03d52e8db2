import type { Month } from "../../shared/day.ts";
import { defaultLimits } from "../../shared/month-report.ts";
import type { Act } from "../usecases/act.ts";
import { setComparison } from "../usecases/months/set-comparison.ts";
import { addBaseline } from "../usecases/settings/add-baseline.ts";

/** Invented, and no benchmark: it says so wherever it is printed. Rehabilitation is left out, so that a ward is not covered. */
const practiceBaseline = {
  name: "Practice baseline",
  source: "Invented for Alder Bay Hospital",
  year: "invented",
  definition: "The figures are invented for practice: compare nothing real with them",
  population: "no hospital",
  edition: "1",
};

const rows = [
  { ward_type: "medical ward", rate_per_1000: "1.3", utilization: "0.18" },
  { ward_type: "surgical ward", rate_per_1000: "1.5", utilization: "0.22" },
  { ward_type: "orthopedic ward", rate_per_1000: "1.4", utilization: "0.25" },
  { ward_type: "medical/surgical critical care", rate_per_1000: "1.7", utilization: "0.55" },
  { ward_type: "step-down unit", rate_per_1000: "1.6", utilization: "0.18" },
];

/** Gives the demo hospital something to compare its months with, and a target. */
export async function setDemoComparison(act: Act): Promise<void> {
  const { baselineId } = await addBaseline(act, { kind: "pooled", origin: practiceBaseline, rows });
  await setComparison(act, {
    ...{ fromMonth: "2000-01" as Month, infectionBaselineId: baselineId, utilizationBaselineId: baselineId },
    ...{ goal: 0.75, limits: defaultLimits, factors: [], reason: "For practice", replaces: 0 },
  });
}
