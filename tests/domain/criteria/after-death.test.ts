import { expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const story = {
  urine: [{ day: 10, grew: [["Escherichia coli", ">100000"]] }],
  signs: [{ day: 10, sign: "38.4" }],
  died: 9,
} as const;
const judged = (afterDeath: "used" | "not-used") =>
  determine(timelineOf(story), { ...us2024, options: { ...us2024.options, afterDeath } }).map(
    ({ outcome, derivation: [first] }) => [outcome, first?.rule, first?.status],
  );

it("what was collected after death is judged like any other where the edition uses it", () => {
  expect(judged("used")).toEqual([["event", "urine-culture", "held"]]);
  expect(judged("not-used")).toEqual([["set-aside", "after-death", "held"]]);
});
