import { gapWords } from "../../../shared/gap-words.ts";
import type { Gap } from "./gaps.ts";

/** A gap in a sentence. */
export function gapSentence({ kind, count }: Pick<Gap, "kind" | "count">): string {
  const { one, several } = gapWords[kind];
  return count === 1 ? one : several.replace("{count}", String(count));
}
