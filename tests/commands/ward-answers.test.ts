import { expect, it } from "vitest";
import { UsageError } from "../../src/commands/command.ts";
import { questionText, wardAnswers } from "../../src/commands/ward-answers.ts";

it("answers name a code and the code of its ward, or a new ward", () => {
  expect(wardAnswers({ ward: ["3 E=3E", "a=b= c"], "new-ward": [" 5S "] })).toEqual([
    { code: "3 E", sameAs: "3E" },
    { code: "a=b", sameAs: "c" },
    { code: "5S", sameAs: null },
  ]);
  for (const text of ["3E", "=3E", "3 E="])
    expect(() => wardAnswers({ ward: [text], "new-ward": [] })).toThrow(UsageError);
});

it("a question says what it asks and how it is answered", () => {
  const near = [
    { code: "3E", name: "3 East" },
    { code: "3F", name: "3F" },
  ];
  expect(questionText({ code: "3 E", near })).toBe(
    'Unit 3 E is not known: a new unit, or the same as 3E (3 East), 3F? Add --ward "3 E=3E" or --new-ward "3 E".\n',
  );
});
