import type { ChartInput } from "../../../shared/chart-input.ts";
import { dwellCurve } from "../statistics/dwell-curve.ts";
import { absentChart } from "./absent-chart.ts";
import { type ComparisonFacts, periodText } from "./comparison-facts.ts";
import { drawnWards } from "./trends-of-wards.ts";

/** More curves than these would run through each other. */
const mostCurves = 5;

/** How long catheters stay in place on the chosen ward and on those with the most catheter-days. */
export function dwellOfWards(facts: ComparisonFacts): ChartInput {
  const head = { id: "dwell", title: `Dwell time (days) of catheters inserted from ${periodText(facts.months)}` };
  const drawn = drawnWards(facts, facts.wards.length).filter(({ dwells }) => dwells.length > 0);
  if (drawn.length === 0)
    return absentChart(head, "No catheter with a known insertion time was inserted on these units.");
  const series = drawn.slice(0, mostCurves).map(({ code, dwells }) => {
    const { steps, median } = dwellCurve(dwells);
    return { name: code, steps: steps.map(({ logVariance: _, ...step }) => step), median: median.time.value };
  });
  const unknown = facts.insertionsUnknown;
  const left = drawn.slice(mostCurves).map(({ code }) => code);
  const sentence =
    "Shows which share of catheters is still in place after so many days, those still in place, deaths and discharges counted as long as they were watched; it does not show which of them were needed.";
  return {
    kind: "dwell",
    input: { ...head, sentence, series },
    notes: [
      "A catheter belongs to the unit of the patient at insertion, or the next one; an exchange does not end the dwell time.",
      ...(unknown === 0
        ? []
        : [
            `Left out, because ${unknown === 1 ? "it was" : "they were"} in place on arrival or the insertion time is not known: ${unknown}.`,
          ]),
      ...(left.length === 0 ? [] : [`Not drawn: ${left.join(", ")}. Choose a unit to see it.`]),
    ],
  };
}
