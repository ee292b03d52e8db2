import { dayText } from "../days/day-number.ts";
import { type QualityKind, qualityKinds } from "../timeline/data-quality.ts";
import { gapSentence, uncountedGapKinds } from "./gap-sentence.ts";
import { missingText } from "./missing-lines.ts";
import type { MonthFacts } from "./month-facts.ts";

/** Days are counted under these rules; printed below every report of days. */
export const countingSources = [
  "CDC Patient Safety Component Manual, chapter 7: one count at the same time each day, catheters present at the count (from memory)",
  "Donnelly et al., Pediatr Qual Saf 2021;6:e466: a count at one time of day, not a running total, and its time changes the result",
];

/** What a reader must know before using the figures of a period, in sentences. */
export function cautionsOf(facts: MonthFacts): string[] {
  return [
    ...[...censusCautions(facts), ...missingCautions(facts), ...wardCautions(facts)],
    ...[...uncountedCautions(facts), ...findingCautions(facts)],
  ];
}

function censusCautions(facts: MonthFacts): string[] {
  const times = facts.census.map((c, i) => (i === 0 ? c.time : `${c.time} from ${dayText(c.fromDay)}`)).join(", ");
  const census = `Counted at the daily census (${times}, ${facts.facility.zone}).`;
  return facts.complete ? [census] : [census, "The period is not over: patients still here are counted up to now."];
}

/** A file of rows has no note, and by day no column for one. */
function missingCautions({ missing, wards }: MonthFacts): string[] {
  const all = missingText(missing);
  const ofWards = wards.flatMap((ward) => {
    const text = missingText(ward.missing);
    return text === "" ? [] : [`${ward.code} (${text})`];
  });
  if (all === "") return [];
  return [`Rejected lines are not counted; ${all}.${ofWards.length > 0 ? ` By unit: ${ofWards.join(", ")}.` : ""}`];
}

function wardCautions({ wards }: MonthFacts): string[] {
  const named = wards.filter((ward) => ward.namedOnly && ward.inpatient === "yes").map((ward) => ward.code);
  const unknown = wards.filter((ward) => ward.inpatient === "unknown").map((ward) => ward.code);
  const cautions: string[] = [];
  if (named.length > 0)
    cautions.push(
      `Named only in moves and counted as inpatient units: ${named.join(", ")}. Describe them in wards.csv.`,
    );
  if (unknown.length > 0)
    cautions.push(
      `Not counted, because the setting of these units is not recorded: ${unknown.join(", ")}. Give each its setting in wards.csv: inpatient, outpatient or procedure.`,
    );
  return cautions;
}

/** In the words in which the month lists them. */
function uncountedCautions({ uncounted }: MonthFacts): string[] {
  return (["no-ward", "outpatient"] as const).flatMap((kind) => {
    const count = uncounted.filter((one) => one.kind === kind).length;
    return count === 0 ? [] : [`Data quality: ${gapSentence({ kind: uncountedGapKinds[kind], count })}`];
  });
}

function findingCautions({ findings }: MonthFacts): string[] {
  const kinds = Object.keys(qualityKinds) as QualityKind[];
  return kinds.flatMap((kind) => {
    const count = findings.filter((finding) => finding.kind === kind).length;
    const [one, several] = qualityKinds[kind];
    return count === 0 ? [] : [`Data quality: ${count} ${count === 1 ? one : several}.`];
  });
}
