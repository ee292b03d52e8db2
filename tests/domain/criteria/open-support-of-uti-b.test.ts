import { expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import type { StorySpecimen } from "../../../src/domain/criteria/story.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";

const coli = [["E. coli", "1000"]] as const;
const signs = [
  { day: 10, sign: "38.2" },
  { day: 10, sign: "dysuria" },
] as const;

/** The last step about the first culture. */
function toldOf(...urine: StorySpecimen[]) {
  const found = determine(timelineOf({ urine, signs }), ecdc2017);
  const first = found.find(({ subject }) => subject.kind === "specimen" && subject.id === 1);
  return first?.derivation.at(-1);
}

it.each([
  [9, 11, 12],
  [9, 12, 11],
])("the cultures that an answer depends on are named in the order of days: %j", (own, ...others) => {
  const open: StorySpecimen[] = others.map((day) => ({ day, grew: [["E. coli", "heavy growth"]] }));
  expect(toldOf({ day: own, grew: coli }, ...open)).toMatchObject({
    status: "cannot-tell",
    sentence: expect.stringContaining("depends on the urine culture of 11 March 2024 and 12 March 2024."),
    lookUp: "Ask the laboratory what grew on 11 March 2024 and 12 March 2024, and how much.",
  });
});

it.each<[string, StorySpecimen[], string]>([
  [
    "one that may be the other, of which nobody knows how much grew",
    [
      { day: 9, grew: coli },
      { day: 11, grew: [["something rare", "1000"]] },
      { day: 12, grew: [["Proteus mirabilis", "heavy growth"]] },
    ],
    "11 March 2024 and 12 March 2024",
  ],
  [
    "one of two organisms has no count",
    [
      { day: 9, grew: [["Klebsiella pneumoniae", "1000"]] },
      {
        day: 11,
        grew: [
          ["E. coli", "1000"],
          ["Klebsiella pneumoniae", "heavy growth"],
        ],
      },
    ],
    "11 March 2024",
  ],
])("only cultures that can still be told otherwise are named: %s", (_, urine, days) => {
  expect(toldOf(...urine)?.sentence).toContain(`depends on the urine culture of ${days}.`);
});

it("under treatment it depends on a culture of which nobody knows whether it grew more than 100,000", () => {
  const urine = [{ day: 10, grew: [["E. coli", ">50000"]] }] as const;
  const story = timelineOf({ urine, signs, findings: [[10, "effective-antimicrobial"]] });
  const last = determine(story, ecdc2017).map(({ derivation }) => derivation.at(-1)?.sentence);
  // Of the culture itself the laboratory's answer decides between UTI-A and what is still open.
  expect(last).toEqual([
    "How much E. coli grew decides the answer. At least 100,000 CFU/ml: UTI-A of 10 March 2024; less: still open.",
    expect.stringContaining("depends on the urine culture of 10 March 2024."),
  ]);
});

it("while one of them is not final, the report is waited for", () => {
  const open: StorySpecimen[] = [
    { day: 11, grew: [["E. coli", "heavy growth"]] },
    { day: 12, status: "pending" },
  ];
  expect(toldOf({ day: 9, grew: coli }, ...open)?.lookUp).toBe("Wait for the laboratory's final report.");
});

it("whether a ward is one for inpatients changes nothing of a culture that closes, and something of one that is open", () => {
  const wards = [[1, 1, null, null]] as const;
  const story = (day: number) =>
    timelineOf({
      wards,
      urine: [
        { day: 9, grew: coli },
        { day, grew: coli },
      ],
      signs: [signs[0]],
      lookedFor: false,
    });
  const told = (day: number) =>
    determine(story(day), ecdc2017).map(({ outcome, derivation }) => [outcome, derivation.at(-1)?.lookUp]);
  expect(told(20)).toEqual([
    ["not-usable", null],
    ["not-usable", null],
  ]);
  const setting = "Give every ward of the patient a setting.";
  expect(told(11)).toEqual([
    ["cannot-tell", setting],
    ["cannot-tell", setting],
  ]);
});
