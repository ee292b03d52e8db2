import { expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

/** How the first step ends, where yeasts do not count as species. */
function told(...names: string[]): [string | undefined, string | undefined] {
  const edition = { ...us2024, options: { ...us2024.options, yeastCountsAsSpecies: false } };
  const grew = names.map((name) => [name, ">100000"] as const);
  const [found] = determine(timelineOf({ urine: [{ day: 10, grew }] }), edition);
  return [found?.derivation[0]?.status, found?.derivation[0]?.sentence];
}

it.each([
  [["E. coli", "K. pneumoniae", "E. faecalis"], "failed", "3 species"],
  [["E. coli", "K. pneumoniae", "Candida albicans"], "held", "can be used"],
  [["E. coli", "K. pneumoniae", "Novelia"], "cannot-tell", "nobody has said what “Novelia” is"],
  [["E. coli", "K. pneumoniae", "E. faecalis", "Novelia"], "failed", "3 species"],
])("where yeasts do not count, %j: %s", (names, status, sentence) => {
  expect(told(...names)).toEqual([status, expect.stringContaining(sentence)]);
});
