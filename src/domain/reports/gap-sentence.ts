import { gapWords } from "../../../shared/gap-words.ts";
import type { Gap } from "./gaps.ts";

/** Under which gap the month lists an uncounted census of each kind. */
export const uncountedGapKinds = { "no-ward": "absence-at-census", outpatient: "outpatient-at-census" } as const;

/** A gap in a sentence. */
export function gapSentence({ kind, count }: Pick<Gap, "kind" | "count">): string {
  const { one, several } = gapWords[kind];
  return count === 1 ? one : several.replace("{count}", String(count));
}
