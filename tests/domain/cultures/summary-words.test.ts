import { expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import type { Story } from "../../../src/domain/criteria/story.ts";
import { criterionTitle, reportedWords, summaryWords } from "../../../src/domain/cultures/summary-words.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const words = (summary: string, editionId = "us-2024") =>
  summaryWords({ summary, outcome: summary.split(",")[0] ?? "", editionId }, new Map([[7, "3E"]]));

it("a determination is told with its outcome, criterion and onset in words, its ward by code", () => {
  expect(words("event, suti-1b, 24 October 2026, present-on-admission, not catheter-associated, no ward")).toBe(
    "Definition met, SUTI 1b: symptomatic infection that is not catheter-associated, 24 October 2026, present on admission, not catheter-associated, no ward",
  );
  expect(words("event, uti-a, 24 October 2026, healthcare-associated, catheter-associated, ward 7", "ecdc-2017")).toBe(
    "Definition met, UTI-A, 24 October 2026, healthcare-associated, catheter-associated, unit 3E",
  );
  expect(words("not-met")).toBe("Definition not met");
});

it("a criterion has its title, and keeps its own name where the edition does not know it", () => {
  expect(criterionTitle("ecdc-2017", "uti-b")).toBe("UTI-B");
  expect(criterionTitle("ecdc-2017", "no-such")).toBe("no-such");
});

it("what is reported beside the line names organisms, those that repeats added, and blood", () => {
  const story = timelineOf({
    urine: [
      { day: 10, grew: [["Escherichia coli", ">100000"]] },
      { day: 12, grew: [["Enterococcus faecalis", ">100000"]] },
    ],
    blood: [{ day: 11, grew: [["Escherichia coli", null]] }],
    signs: [
      { day: 10, sign: "dysuria" },
      { day: 12, sign: "dysuria" },
    ],
  });
  expect(determine(story, us2024).map(reportedWords)).toEqual([
    ". Organisms: Escherichia coli, Enterococcus faecalis. Secondary bloodstream infection: 1 blood specimen",
    "",
  ]);
});

it("an edition without a period for blood says nothing of it", () => {
  const grew = [["Escherichia coli", ">100000"]] as const;
  const signs = [
    { day: 10, sign: "dysuria" },
    { day: 10, sign: "38.4" },
  ] as const;
  const told = (story: Story) => determine(timelineOf({ ...story, signs }), ecdc2017).map(reportedWords);
  expect(told({ urine: [{ day: 10, grew }], blood: [{ day: 10, grew }] })).toEqual([". Organisms: Escherichia coli"]);
  expect(told({ findings: [[10, "pyuria"]] })).toEqual([". Organisms: none"]);
});
