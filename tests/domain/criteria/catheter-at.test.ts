import { expect, it } from "vitest";
import { catheterAt } from "../../../src/domain/criteria/catheter-at.ts";
import type { CatheterTime, Moment } from "../../../src/domain/criteria/surveillance-timeline.ts";

const moment = (day: number, at: number | null): Moment => ({ day, at });
const time = (start: Moment | null, end: Moment | null): CatheterTime => ({
  id: 1,
  kind: "indwelling-urethral",
  start,
  end,
  latestEndDay: null,
});

it.each<[string, Moment | null, Moment | null, Moment, "in" | "out" | "part"]>([
  ["the day before", moment(2, 20), moment(8, 80), moment(1, null), "out"],
  ["the day after", moment(2, 20), moment(8, 80), moment(11, null), "out"],
  ["between", moment(2, 20), moment(8, 80), moment(5, null), "in"],
  ["the day of insertion, hour unknown", moment(2, 20), moment(8, 80), moment(2, null), "part"],
  ["before the insertion", moment(2, 20), moment(8, 80), moment(2, 19), "out"],
  ["at the insertion", moment(2, 20), moment(8, 80), moment(2, 20), "in"],
  ["the day of an insertion of unknown hour", moment(2, null), moment(8, 80), moment(2, 19), "part"],
  ["the first day of one in place on arrival", null, moment(8, 80), moment(2, null), "in"],
  ["before the removal", moment(2, 20), moment(8, 80), moment(8, 79), "in"],
  ["at the removal", moment(2, 20), moment(8, 80), moment(8, 80), "out"],
  ["the day of removal, hour unknown", moment(2, 20), moment(8, 80), moment(8, null), "part"],
  ["the day of a removal of unknown hour", moment(2, 20), moment(8, null), moment(8, 79), "part"],
  ["the last day while it is in place", moment(2, 20), null, moment(8, 99), "in"],
])("%s", (_title, start, end, when, answer) => {
  const last = 8;
  const shown = when.day > 10 ? { ...when, day: last + 1 } : when;
  expect(catheterAt({ catheters: [{ first: 2, last, isOpen: end === null, time: time(start, end) }] }, shown)).toBe(
    answer,
  );
});

it("on the last day on which it may have been in place nobody can tell, whatever the hour", () => {
  const catheters = [{ first: 2, last: 10, isOpen: false, time: time(moment(2, 20), moment(8, 80)) }];
  const answers = [8, 9, 10, 11].map((day) => catheterAt({ catheters }, moment(day, day * 10 + 5)));
  expect(answers).toEqual(["in", "in", "part", "out"]);
});

it("one that is in place decides, whatever is known of the others", () => {
  const doubtful = { first: 5, last: 5, isOpen: true, time: time(moment(5, null), null) };
  const sure = { first: 2, last: 9, isOpen: true, time: time(moment(2, 20), null) };
  const gone = { first: 1, last: 1, isOpen: false, time: time(moment(1, 10), moment(1, 11)) };
  expect(catheterAt({ catheters: [doubtful, sure] }, moment(5, 50))).toBe("in");
  expect(catheterAt({ catheters: [gone, doubtful] }, moment(5, 50))).toBe("part");
  expect(catheterAt({ catheters: [] }, moment(5, 50))).toBe("out");
});
