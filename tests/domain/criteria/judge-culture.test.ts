import { expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

/** How the first step ends, where yeasts do not count as species. */
function told(...names: string[]): [string | undefined, string | undefined] {
  const edition = { ...us2024, options: { ...us2024.options, yeastCountsAsSpecies: false } };
  const grew = names.map((name) => [name, ">100000"] as const);
  const [found] = determine(timelineOf({ urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "38.4" }] }), edition);
  return [found?.derivation[0]?.status, found?.derivation[0]?.sentence];
}

it.each([
  [["E. coli", "K. pneumoniae", "E. faecalis"], "failed", "3 species"],
  [["E. coli", "K. pneumoniae", "Candida albicans"], "held", "can be used"],
  [["E. coli", "K. pneumoniae", "Novelia"], "cannot-tell", "“Novelia” has no group"],
  [["E. coli", "K. pneumoniae", "E. faecalis", "Novelia"], "failed", "3 species"],
])("where yeasts do not count, %j: %s", (names, status, sentence) => {
  expect(told(...names)).toEqual([status, expect.stringContaining(sentence)]);
});

it.each<[readonly (readonly [string, string])[], string, string[]]>([
  [
    [
      ["E. coli", ""],
      ["K. pneumoniae", "heavy growth"],
    ],
    "cannot be judged: E. coli has no count and K. pneumoniae has “heavy growth”.",
    ["Ask the laboratory how much E. coli grew.", "Ask the laboratory how much K. pneumoniae grew."],
  ],
  [
    [
      ["E. coli", "50000"],
      ["K. pneumoniae", ""],
    ],
    "cannot be judged: K. pneumoniae has no count.",
    ["Ask the laboratory how much K. pneumoniae grew."],
  ],
  [
    [
      ["Candida albicans", ""],
      ["E. coli", ""],
    ],
    "cannot be judged: E. coli has no count.",
    ["Ask the laboratory how much E. coli grew."],
  ],
])("every organism that needs a count and has none is named: %j", (grew, sentence, lookUps) => {
  const [found] = determine(timelineOf({ urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "38.4" }] }), us2024);
  expect(found?.derivation[0]?.sentence).toContain(sentence);
  expect(found?.derivation.flatMap((step) => step.lookUp ?? [])).toEqual(lookUps);
});

it.each([
  [["No growth at 48 hours"], "negative", "grew nothing"],
  [["No growth", "Negative"], "negative", "grew nothing"],
  [["No significant growth"], "cannot-tell", "“No significant growth” has no group"],
  [["E. coli", "No growth"], "cannot-tell", "the report says no growth beside E. coli"],
])("a report of %j: %s", (names, outcome, sentence) => {
  const grew = names.map((name) => [name, null] as const);
  const [found] = determine(timelineOf({ urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "38.4" }] }), us2024);
  expect(found?.outcome).toBe(outcome);
  expect(found?.derivation[0]?.sentence).toContain(sentence);
});

// Common practice: a laboratory that reports no growth names no amount, or less than it can see ("<1000").
it.each<[string, string, "negative" | "cannot-tell"]>([
  ["No growth", "0", "negative"],
  ["No growth", "<1000", "negative"],
  ["Negative", "No growth", "negative"],
  ["No growth", "none", "negative"],
  ["No growth", ">100000", "cannot-tell"],
  ["Negative", "75,000-100,000", "cannot-tell"],
  ["No growth at 48 hours", "heavy growth", "cannot-tell"],
])("a report of %j with the count %j is %s", (name, count, outcome) => {
  const story = { urine: [{ day: 10, grew: [[name, count]] as const }], signs: [{ day: 10, sign: "38.4" }] as const };
  for (const edition of [us2024, ecdc2017]) {
    const [found] = determine(timelineOf(story), edition);
    expect([edition.id, found?.outcome, found?.closes]).toEqual([edition.id, outcome, outcome === "negative"]);
    if (outcome === "negative") continue;
    expect(found?.derivation[0]?.sentence).toContain("the report says no growth with");
    expect(found?.derivation[0]?.lookUp).toBe("Ask the laboratory what grew, and correct the specimen.");
  }
});
