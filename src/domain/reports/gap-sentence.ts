import { gapWords } from "../../../shared/gap-words.ts";
import type { Gap } from "./gaps.ts";

/** Under which gap the month lists an uncounted census of each kind. */
export const uncountedGapKinds = { "no-ward": "absence-at-census", outpatient: "outpatient-at-census" } as const;

/** A gap in sentences. Of lines it says which units they touch, and of how many the unit or the month cannot be read. */
export function gapSentence({ kind, count, detail, held }: Pick<Gap, "kind" | "count" | "detail" | "held">): string {
  const { one, several } = gapWords[kind];
  const sentence = count === 1 ? one : several.replace("{count}", String(count));
  const { lines = [], wards = [] } = held ?? {};
  const unplaced = lines.filter((line) => line.wards === null).length;
  const undated = lines.filter((line) => !line.dated).length;
  return [
    sentence,
    ...(detail === undefined ? [] : [detail]),
    ...(wards.length > 0 ? [`${wards.length === 1 ? "Unit" : "Units"}: ${wards.join(", ")}.`] : []),
    ...(unplaced > 0 ? [`Unit not readable: ${unplaced}.`] : []),
    ...(undated > 0 ? [`Month not readable: ${undated}.`] : []),
  ].join(" ");
}
