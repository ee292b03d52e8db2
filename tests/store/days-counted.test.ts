import { expect, it } from "vitest";
import { longestWindowDays } from "../../src/domain/editions/index.ts";
import { daysCounted, type StoredDetermination } from "../../src/store/determinations.ts";

const day = 20_000;
const days = (said: Partial<StoredDetermination>) =>
  daysCounted({ eventDay: null, day, mayCount: null, ...said } as StoredDetermination);

it("a culture touches the days on which any reading can put its event", () => {
  // The European edition may be read with a window of 7 days.
  expect(longestWindowDays).toBe(7);
  expect(days({})).toEqual({ first: day - 7, last: day });
  expect(days({ eventDay: day - 6 })).toEqual({ first: day - 13, last: day - 6 });
});

it("a culture touches the whole of each month in which it may count", () => {
  const mayCount = JSON.stringify([{ wardId: 1, month: "2024-09" }]);
  // Day 20,000 is 4 October 2024.
  expect(days({ mayCount })).toEqual({ first: day - 33, last: day });
});
