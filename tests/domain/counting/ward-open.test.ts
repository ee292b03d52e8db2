import { expect, it } from "vitest";
import { isOpenOn } from "../../../src/domain/counting/ward-open.ts";
import { dayOf } from "../../reference/day-text.ts";

it.each([
  { closed: "2026-11-20", day: "2026-11-19", open: true },
  { closed: "2026-11-20", day: "2026-11-20", open: true },
  { closed: "2026-11-20", day: "2026-11-21", open: false },
  { closed: null, day: "2026-11-21", open: true },
])("a ward with the last day $closed is open on $day: $open", ({ closed, day, open }) => {
  expect(isOpenOn({ closedDay: closed === null ? null : dayOf(closed) }, dayOf(day))).toBe(open);
});
