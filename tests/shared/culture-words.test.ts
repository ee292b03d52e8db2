import { describe, expect, it } from "vitest";
import {
  countKind,
  countKinds,
  determinationCaution,
  determinationOutcome,
  determinationOutcomes,
  onset,
  onsets,
  organismGroup,
  organismGroups,
  signFinding,
  signFindings,
  signName,
  signNames,
  specimenKind,
  specimenKinds,
  specimenMethod,
  specimenMethods,
  specimenStatus,
  specimenStatuses,
  stepStatus,
  stepStatuses,
  temperatureUnit,
  temperatureUnits,
  urineFinding,
  urineFindings,
} from "../../shared/culture-words.ts";

const lists = [
  { name: "kinds of specimens", list: specimenKinds, word: specimenKind },
  { name: "methods", list: specimenMethods, word: specimenMethod },
  { name: "statuses", list: specimenStatuses, word: specimenStatus },
  { name: "groups of organisms", list: organismGroups, word: organismGroup },
  { name: "kinds of counts", list: countKinds, word: countKind },
  { name: "signs", list: signNames, word: signName },
  { name: "findings of signs", list: signFindings, word: signFinding },
  { name: "units", list: temperatureUnits, word: temperatureUnit },
  { name: "findings in urine", list: urineFindings, word: urineFinding },
  { name: "outcomes", list: determinationOutcomes, word: determinationOutcome },
  { name: "statuses of steps", list: stepStatuses, word: stepStatus },
  { name: "onsets", list: onsets, word: onset },
];

describe("the closed lists of cultures and determinations", () => {
  it.each(lists)("$name: the enum holds exactly the words that have a label of their own", ({ list, word }) => {
    expect(word.options).toEqual(Object.keys(list));
    const labels: string[] = Object.values(list);
    expect(new Set(labels).size).toBe(labels.length);
    for (const label of labels) expect(label).toMatch(/^[A-Z°][^\n]+$/);
    expect(word.safeParse("foley").success).toBe(false);
  });

  it("says beside every determination what it is not", () => {
    expect(determinationCaution).toContain("not a diagnosis");
  });
});
