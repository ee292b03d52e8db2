import { expect, it } from "vitest";
import { groupedBy } from "../../src/usecases/grouped-by.ts";

it("puts items together by a number, in the order in which they came", () => {
  const [a, b, c] = [
    { ward: 3, day: 2 },
    { ward: 1, day: 1 },
    { ward: 3, day: 1 },
  ];
  expect([...groupedBy([a, b, c], ({ ward }) => ward)]).toEqual([
    [3, [a, c]],
    [1, [b]],
  ]);
  expect(groupedBy([], () => 1).size).toBe(0);
});
