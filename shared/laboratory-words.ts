import { z } from "zod";
import { words } from "./vocabulary.ts";

/** Which column a laboratory's wording stands in. */
const wordColumns = { organism: "Organism", count: "Count" } as const;
export const wordColumn = z.enum(words(wordColumns));
export type WordColumn = z.infer<typeof wordColumn>;

/** What a wording of the count column can be chosen to mean. 100,000 CFU/ml is the limit of every edition. */
export const countChoices = {
  "at-least-100000": "At least 100,000 CFU/mL",
  "below-100000": "Below 100,000 CFU/mL",
  unreadable: "Cannot be read",
} as const;
export type CountChoice = keyof typeof countChoices;

/** A column name and a wording in one text, by which choices are found. */
export function wordKey(column: WordColumn, wording: string): string {
  return `${column} ${wording}`;
}
