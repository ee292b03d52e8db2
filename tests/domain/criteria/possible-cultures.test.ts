import { expect, it } from "vitest";
import { type Determination, determine, type Edition, timelineOf } from "../../../src/domain/criteria/index.ts";
import type { Story } from "../../../src/domain/criteria/story.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

type Grew = readonly (readonly [string, string | null])[];

const fever = [{ day: 9, sign: "38.4" }] as const;
/** A catheter since day 2 and fever: a usable culture is a CAUTI. */
const withFever = (grew: Grew): Story => ({ catheters: [[2, null]], urine: [{ day: 10, grew }], signs: fever });
/** All signs were looked for and absent. */
const withoutSigns = (grew: Grew, blood: Story["blood"] = []): Story => ({
  ...{ catheters: [[2, null]], urine: [{ day: 10, grew }], blood },
});

function first(story: Story, edition: Edition = us2024): Determination {
  const [found] = determine(timelineOf(story), edition);
  if (!found) throw new Error("no determination");
  return found;
}

const lookUps = ({ derivation }: Determination) =>
  derivation.flatMap(({ lookUp }) => (lookUp === null ? [] : [lookUp]));
const told = ({ derivation }: Determination) => derivation.map(({ sentence }) => sentence).join("\n");

it.each<[string, Grew]>([
  ["a category", [["E. coli", "50,000-100,000"]]],
  ["more than too few", [["E. coli", ">50000"]]],
])("%s on both sides of the limit waits, with the question to the laboratory", (_title, grew) => {
  const found = first(withFever(grew));
  expect(found.outcome).toBe("cannot-tell");
  expect(lookUps(found)).toEqual(["Ask the laboratory whether at least 100,000 CFU/ml of E. coli grew."]);
  expect(told(found)).toContain("At least 100,000 CFU/ml: SUTI 1a of 9 March 2024; less: no infection.");
});

it.each<[string, Grew]>([
  [
    "mixed flora beside it",
    [
      ["E. coli", "50,000-100,000"],
      ["mixed flora", null],
    ],
  ],
  [
    "three species",
    [
      ["E. coli", "50,000-100,000"],
      ["K. pneumoniae", "1000"],
      ["E. faecalis", "1000"],
    ],
  ],
])("the laboratory is not asked where its answer cannot matter: %s", (_title, grew) => {
  const found = first(withFever(grew));
  expect([found.outcome, lookUps(found)]).toEqual(["not-usable", []]);
});

it("a straddling count without any sign or blood is no infection, whatever the laboratory says", () => {
  const found = first(withoutSigns([["E. coli", "50,000-100,000"]]));
  expect([found.outcome, lookUps(found)]).toEqual(["not-met", []]);
  expect(told(found)).toContain("the answer is the same");
});

it("an unknown organism with 10,000 cannot be used, whatever it is", () => {
  const found = first(withFever([["Novelia", "10000"]]));
  expect([found.outcome, lookUps(found)]).toEqual(["not-usable", []]);
});

it("a missing count without any sign or blood that could match is no infection", () => {
  const found = first(withoutSigns([["E. coli", null]], [{ day: 10, grew: [["Klebsiella pneumoniae", null]] }]));
  expect([found.outcome, lookUps(found)]).toEqual(["not-met", []]);
});

it.each<[string, NonNullable<Story["blood"]>]>([
  ["grew the same", [{ day: 10, grew: [["Escherichia coli", null]] }]],
  ["is pending", [{ day: 10, status: "pending" }]],
])("a missing count is asked for where blood %s", (_title, blood) => {
  const found = first(withoutSigns([["E. coli", null]], blood));
  expect(found.outcome).toBe("cannot-tell");
  expect(lookUps(found)).toContain("Ask the laboratory how much E. coli grew.");
});

it("the count of a second organism is asked for where blood matches that one alone", () => {
  const grew: Grew = [
    ["E. coli", ">100000"],
    ["K. pneumoniae", null],
  ];
  const blood = [{ day: 10, grew: [["Klebsiella pneumoniae", null]] }] as const;
  const found = first(withoutSigns(grew, blood));
  expect(found.outcome).toBe("cannot-tell");
  expect(lookUps(found)).toEqual(["Ask the laboratory how much K. pneumoniae grew."]);
  expect(first(withoutSigns(grew)).outcome).toBe("not-met");
});

it("an unknown name may be one of the others, so it does not close as a third species", () => {
  const grew: Grew = [
    ["E. coli", ">100000"],
    ["K. pneumoniae", "1000"],
    ["Novelia", "1000"],
  ];
  const found = first(withFever(grew));
  expect(found.outcome).toBe("cannot-tell");
  expect(lookUps(found)).toEqual(["Choose a group for “Novelia”."]);
});

it("an unknown name with enough of it may be what blood grew", () => {
  const blood = [{ day: 10, grew: [["Escherichia coli", null]] }] as const;
  expect(first(withoutSigns([["Novelia", ">100000"]], blood)).outcome).toBe("cannot-tell");
  expect(first(withoutSigns([["Novelia", ">100000"]])).outcome).toBe("not-met");
});

it("only questions whose answer decides are asked", () => {
  const found = first(
    withFever([
      ["E. coli", null],
      ["Candida albicans", null],
    ]),
  );
  expect(lookUps(found)).toEqual(["Ask the laboratory how much E. coli grew."]);
});

it("more unknown names than can be tried wait for a person, with every question", () => {
  const names = ["Aaa", "Bbb", "Ccc", "Ddd", "Eee", "Fff"];
  const found = first(withFever(names.map((name) => [name, null])));
  expect(found.outcome).toBe("cannot-tell");
  expect(lookUps(found).join(" ")).toContain("“Fff”");
});

it("blood of an unknown name does not silently leave out a secondary bloodstream infection", () => {
  const found = first({ ...withFever([["E. coli", ">100000"]]), blood: [{ day: 12, grew: [["Novelia", null]] }] });
  expect(found.event).toMatchObject({ secondaryBloodstream: [], bloodstreamWaiting: [101] });
  expect(lookUps(found)).toEqual(["Choose a group for what the blood grew."]);
});

it("European definitions wait for the laboratory too", () => {
  const found = first(withFever([["Candida albicans", "50,000-100,000"]]), ecdc2017);
  expect(found.outcome).toBe("cannot-tell");
  expect(lookUps(found)).toEqual(["Ask the laboratory whether at least 100,000 CFU/ml of Candida albicans grew."]);
});
