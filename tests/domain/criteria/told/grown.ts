import { signName } from "../../../../shared/culture-words.ts";
import type { StorySign } from "../../../../src/domain/criteria/story.ts";

/** A usable urine culture. */
export const coli = [["Escherichia coli", ">100000"]] as const;
/** A common commensal of the skin. */
export const skin = [["Staphylococcus epidermidis", ">100000"]] as const;
/** A catheter since day 2, still in place. */
export const since2 = [[2, null]] as const;

/** A chart review of all signs: none is documented. */
export function reviewed(days: { day: number; through: number; read: number }): StorySign[] {
  return signName.options.map((sign) => ({ sign, finding: "not-documented", ...days }));
}
