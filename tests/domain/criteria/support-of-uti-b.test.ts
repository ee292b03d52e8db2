import { expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import type { StorySpecimen } from "../../../src/domain/criteria/story.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";

// HAI-Net, 2017, UTI-B: two cultures with the same uropathogen (Gram-negative, or S. saprophyticus) of 100 per ml or
// more, or up to 100,000 per ml of a single uropathogen under effective treatment. Signs are there in every story.
const signs = [
  { day: 10, sign: "38.2" },
  { day: 10, sign: "dysuria" },
] as const;

type Grew = readonly (readonly [string, string])[];

/** What is said of the first culture. */
function outcomeOf(isTreated: boolean, ...urine: Partial<StorySpecimen>[]) {
  const days = urine.map((one, i): StorySpecimen => ({ day: 9 + i, ...one }));
  const treated = isTreated ? ([[10, "effective-antimicrobial"]] as const) : [];
  const story = timelineOf({ urine: days, signs, findings: treated });
  const found = determine(story, ecdc2017).find(({ subject }) => subject.kind === "specimen" && subject.id === 1);
  return found?.event?.criterion ?? found?.outcome;
}

const coli: Grew = [["E. coli", "1000"]];

it.each<[string, Grew, "uti-b" | "not-usable" | "cannot-tell"]>([
  ["100 and 1,000 of the same", [["E. coli", "100"]], "uti-b"],
  ["99 and 1,000 of the same", [["E. coli", "99"]], "not-usable"],
  ["up to 99", [["E. coli", "<=99"]], "not-usable"],
  ["less than 1,000", [["E. coli", "<1000"]], "cannot-tell"],
  ["more than 50", [["E. coli", ">50"]], "cannot-tell"],
  ["words", [["E. coli", "few"]], "cannot-tell"],
  ["no count", [["E. coli", ""]], "cannot-tell"],
  ["another species", [["Proteus mirabilis", "1000"]], "not-usable"],
  ["another species without a count", [["Proteus mirabilis", ""]], "not-usable"],
  ["the genus alone", [["Escherichia", "1000"]], "uti-b"],
  ["the genus alone without a count", [["Escherichia", ""]], "cannot-tell"],
  ["a name that is not on the list", [["something rare", "1000"]], "cannot-tell"],
  ["such a name with too few", [["something rare", "99"]], "not-usable"],
  ["a covering name", [["Gram-negative rods", "1000"]], "not-usable"],
  [
    "the same beside another",
    [
      ["Proteus mirabilis", "1000"],
      ["E. coli", "1000"],
    ],
    "uti-b",
  ],
  ["a yeast", [["Candida albicans", "1000"]], "not-usable"],
  ["nothing", [], "not-usable"],
])("1,000 of E. coli, and a second culture with %s", (_, grew, expected) => {
  expect(outcomeOf(false, { grew: coli }, { grew })).toBe(expected);
});

it.each<[string, Grew, "uti-b" | "not-usable" | "cannot-tell"]>([
  ["an enterococcus, which is no uropathogen here", [["Enterococcus faecalis", "1000"]], "not-usable"],
  ["S. saprophyticus", [["Staphylococcus saprophyticus", "1000"]], "uti-b"],
  ["Gram-negative rods, of which nobody said more", [["Gram-negative rods", "1000"]], "cannot-tell"],
  ["a yeast", [["Candida albicans", "1000"]], "not-usable"],
  ["a yeast of which nobody said more", [["yeast", "1000"]], "not-usable"],
  ["a bacterium with the rest unknown", [["Gram-negative rods", "99"]], "not-usable"],
])("the same in two cultures: %s", (_, grew, expected) => {
  expect(outcomeOf(false, { grew }, { grew })).toBe(expected);
});

it.each<[StorySpecimen["status"], Grew, string]>([
  ["pending", [], "cannot-tell"],
  ["preliminary", coli, "cannot-tell"],
  ["preliminary", [["Proteus mirabilis", "1000"]], "cannot-tell"],
  ["withdrawn", coli, "not-usable"],
  ["corrected", coli, "uti-b"],
])("a second culture that is %s with %j", (status, grew, expected) => {
  expect(outcomeOf(false, { grew: coli }, { grew, status })).toBe(expected);
});

it.each<[string, Grew]>([
  ["too few", [["E. coli", "99"]]],
  ["no uropathogen", [["Enterococcus faecalis", "1000"]]],
])("a pending second culture opens nothing where the first grew %s", (_, grew) => {
  expect(outcomeOf(false, { grew }, { status: "pending" })).toBe("not-usable");
});

it("a pending second culture opens what the first grew beside something else", () => {
  const both: Grew = [
    ["Enterococcus faecalis", "1000"],
    ["E. coli", "1000"],
  ];
  expect(outcomeOf(false, { grew: both }, { status: "pending" })).toBe("cannot-tell");
});

it("no pending culture is its own second, and a culture that supports it already waits for none", () => {
  expect(outcomeOf(false, { grew: coli })).toBe("not-usable");
  expect(outcomeOf(false, { grew: coli }, { grew: coli }, { status: "pending" })).toBe("uti-b");
  expect(outcomeOf(true, { grew: coli }, { status: "pending" })).toBe("uti-b");
});

it.each<[string, Grew, "uti-b" | "not-usable" | "cannot-tell"]>([
  ["1 of a single one", [["E. coli", "1"]], "uti-b"],
  // Fewer than 100,000 is UTI-B, 100,000 is UTI-A.
  ["75,000-100,000", [["E. coli", "75,000-100,000"]], "cannot-tell"],
  ["more than 50,000", [["E. coli", ">50000"]], "cannot-tell"],
  ["no uropathogen", [["Enterococcus faecalis", "1000"]], "not-usable"],
  ["Gram-negative rods", [["Gram-negative rods", "1000"]], "cannot-tell"],
  ["a yeast", [["Candida albicans", "1000"]], "not-usable"],
  [
    "two",
    [
      ["E. coli", "1000"],
      ["Proteus mirabilis", "1000"],
    ],
    "not-usable",
  ],
])("under effective treatment: %s", (_, grew, expected) => {
  expect(outcomeOf(true, { grew })).toBe(expected);
});

/** What is said of a finding of effective treatment beside one culture. */
function besideTreatment(grew: Grew, status: StorySpecimen["status"] = "final") {
  const urine = [{ day: 10, grew, status }] as const;
  const timeline = timelineOf({ urine, signs, findings: [[10, "effective-antimicrobial"]] });
  const found = determine(timeline, ecdc2017).find(({ subject }) => subject.kind === "finding");
  return [found?.event?.criterion ?? found?.outcome, found?.derivation.at(-1)?.lookUp];
}

it("treatment beside a culture that is open says what to look up", () => {
  expect(besideTreatment([], "pending")).toEqual(["cannot-tell", "Wait for the laboratory's final report."]);
  const ask = "Ask the laboratory what grew on 10 March 2024, and how much.";
  expect(besideTreatment([["E. coli", "heavy growth"]])).toEqual(["cannot-tell", ask]);
  expect(besideTreatment([["something rare", "1000"]])).toEqual(["cannot-tell", ask]);
  for (const plenty of [">100000", ">=100000", "10^6"]) {
    expect(besideTreatment([["E. coli", plenty]]), plenty).toEqual(["not-met", null]);
  }
});
