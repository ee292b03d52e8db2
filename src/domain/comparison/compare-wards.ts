import type { ChartInput } from "../../../shared/chart-input.ts";
import { unwatchedSentences } from "../reports/infections.ts";
import { type ComparisonFacts, totalsOf } from "./comparison-facts.ts";
import { gapControl, monthlyControl } from "./control-charts.ts";
import { dwellOfWards } from "./dwell-of-wards.ts";
import { funnelOfWards } from "./funnel-of-wards.ts";
import { orderOfWards } from "./order-of-wards.ts";
import { trendsOfWards } from "./trends-of-wards.ts";

/** The charts of a comparison, in the order in which they are read. */
export function chartsOf(facts: ComparisonFacts): ChartInput[] {
  return [
    funnelOfWards(facts),
    orderOfWards(facts),
    ...trendsOfWards(facts),
    ...monthlyControl(facts),
    gapControl(facts),
    dwellOfWards(facts),
  ];
}

/** What a reader must know before comparing these wards. */
export function cautionsOf(facts: ComparisonFacts): string[] {
  const types = new Set(facts.wards.map(({ type }) => type ?? "type not given"));
  const isMixed = facts.type === null && types.size > 1;
  const pairs = (facts.wards.length * (facts.wards.length - 1)) / 2;
  return [
    ...(isMixed
      ? [
          `Units of ${types.size} types are compared, which differ for good reasons: choose a type to compare like with like.`,
        ]
      : []),
    ...(pairs > 1
      ? [
          `These ${facts.wards.length} units make ${pairs.toLocaleString("en-US")} pairs: some of them differ by chance alone.`,
        ]
      : []),
    "Infections count by unit of attribution and date of event, over catheter-days of months under surveillance alone.",
    ...openSentence(openOf(facts)),
    ...unwatchedSentences(facts.notCounted),
    ...(facts.complete ? [] : ["The last month is not over: patients still here are counted up to now."]),
    "Small units have wide limits: look at the limits before you call a unit different.",
  ];
}

/** How many cultures could still become a CAUTI of these wards and months. */
export function openOf({ wards }: Pick<ComparisonFacts, "wards">): number {
  return totalsOf(wards.flatMap(({ months }) => months)).open;
}

function openSentence(open: number): string[] {
  if (open === 0) return [];
  const are = open === 1 ? "1 culture is" : `${open} cultures are`;
  return [`${are} open and not counted, so the rates they could change are not final.`];
}

/** The publications that the charts follow. */
export const comparisonSources = [
  "Funnel: Spiegelhalter, Stat Med 2005;24:1185-1202",
  "Rates adjusted for small numbers: Marshall, J R Stat Soc C 1991;40:283-294 (from memory)",
  "Runs about the median: Anhoej and Olesen, PLoS ONE 2014;9:e113825",
  "Laney limits: Laney, Quality Engineering 2002;14:531-537; outlying moving ranges: Nelson, J Qual Technol 1982;14:172-173 (from memory)",
  "Gaps between infections: Benneyan, Health Care Manag Sci 2001;4:305-318 (from memory)",
  "Dwell time: Kaplan and Meier, J Am Stat Assoc 1958;53:457-481",
  "Rates and utilization: CDC Patient Safety Component Manual, chapter 7",
];
