import { expect, it } from "vitest";
import { clockTime, dayAndTime, dayOfTime } from "../../../src/domain/necessity/times-in-words.ts";
import { march, newYork } from "../counting/march-records.ts";

it("tells an instant by the clocks of the zone, without its seconds", () => {
  const at = march("10", "23:05") + 59_000;
  expect(clockTime(newYork, at)).toBe("23:05");
  expect(dayOfTime(newYork, at)).toBe("2024-03-10");
  expect(dayAndTime(newYork, at)).toBe("2024-03-10 23:05");
});
