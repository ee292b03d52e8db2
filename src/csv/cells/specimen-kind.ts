import { type SpecimenKind, specimenKinds } from "../../../shared/culture-words.ts";
import { refuse } from "../../../shared/problems.ts";
import type { CellReader } from "../column.ts";
import { closedList } from "./closed-list.ts";

const words = closedList(specimenKinds);

/**
 * Urine or blood. Refuses all else (`csv-word`); the tip of a catheter is named, because it is often sent as if it were
 * urine: it is never a usable specimen (common practice; CDC Patient Safety Component Manual, chapter 7, from memory).
 */
export const specimenKindCell: CellReader<SpecimenKind> = {
  isIdentifier: false,
  read(text, context) {
    if (!/\btip\b/i.test(text)) return words.read(text, context);
    const remedy = "Write the kind urine with the method catheter-tip: it is kept and never used as a urine culture.";
    return refuse("csv-word", `A catheter tip is neither urine nor blood. ${remedy}`);
  },
};
