import { expect, it } from "vitest";
import { daysWords, dayWords, listWords, rangeWords } from "../../../src/domain/criteria/in-words.ts";
import { dayOf } from "../../reference/day-text.ts";

it.each([
  ["2024-01-01", "1 January 2024"],
  ["2024-02-29", "29 February 2024"],
  ["2023-03-31", "31 March 2023"],
  ["2024-04-05", "5 April 2024"],
  ["2024-05-05", "5 May 2024"],
  ["2024-06-05", "5 June 2024"],
  ["2024-07-05", "5 July 2024"],
  ["2024-08-05", "5 August 2024"],
  ["2024-09-05", "5 September 2024"],
  ["2024-10-05", "5 October 2024"],
  ["2024-11-05", "5 November 2024"],
  ["1999-12-31", "31 December 1999"],
])("%s is written %s", (day, words) => {
  expect(dayWords(dayOf(day))).toBe(words);
});

it.each([
  ["2024-03-07", "2024-03-13", "7 March to 13 March 2024"],
  ["2024-12-29", "2025-01-04", "29 December 2024 to 4 January 2025"],
  ["2024-12-31", "2024-12-31", "31 December to 31 December 2024"],
])("%s to %s is written %s", (first, last, words) => {
  expect(rangeWords({ first: dayOf(first), last: dayOf(last) })).toBe(words);
});

it("counts days and joins lists", () => {
  expect([0, 1, 2].map(daysWords)).toEqual(["0 days", "one day", "2 days"]);
  const lists = [[], ["a"], ["a", "b"], ["a", "b", "c"]];
  expect(lists.map((list) => listWords(list, "or"))).toEqual(["nothing", "a", "a or b", "a, b or c"]);
  expect(listWords(["a", "b"], "and")).toBe("a and b");
});
