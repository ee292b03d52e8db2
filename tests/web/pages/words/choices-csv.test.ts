import { expect, it } from "vitest";
import { choicesCsv, choicesOf } from "../../../../src/web/pages/words/choices-csv.ts";

it("choices come back from the CSV as they were, and rows without a choice are left out", () => {
  const words = [
    { column: "organism", wording: 'odd, "rod"', choice: "bacterium" },
    { column: "count", wording: "+++", choice: "at-least-100000" },
    { column: "organism", wording: "waits", choice: null },
  ];
  const csv = choicesCsv(words);
  expect(csv.split("\r\n")).toEqual([
    "column,wording,choice",
    'organism,"odd, ""rod""",bacterium',
    "count,'+++,at-least-100000",
    "organism,waits,",
    "",
  ]);
  expect(choicesOf(csv)).toEqual(words.slice(0, 2));
  expect(choicesOf(`\uFEFF${csv.replaceAll("\r\n", "\n")}\n\n`)).toEqual(words.slice(0, 2));
  expect(choicesOf("")).toEqual([]);
});
