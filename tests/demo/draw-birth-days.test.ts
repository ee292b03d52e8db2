import { expect, it } from "vitest";
import { completedYears } from "../../src/domain/criteria/age.ts";
import { hospitalAt, noon, zone } from "./drawn.ts";

it("nearly every patient has a birth day, of an adult; of a few nobody knows it", () => {
  const { courses } = hospitalAt(noon);
  const today = zone.dayOf(noon);
  const known = courses.flatMap(({ bornOn }) => (typeof bornOn === "number" ? [completedYears(bornOn, today)] : []));
  const missing = courses.filter(({ bornOn }) => bornOn === null);
  expect(known.length + missing.length).toBe(courses.length);
  expect(missing.length / courses.length).toBeGreaterThan(0.005);
  expect(missing.length / courses.length).toBeLessThan(0.05);
  expect(missing.map(({ stay }) => stay)).toContain("SX-present-on-admission");
  expect(Math.min(...known)).toBeGreaterThanOrEqual(17);
  expect(Math.max(...known)).toBeLessThanOrEqual(97);
  const old = known.filter((years) => years > 65).length / known.length;
  expect(old).toBeGreaterThan(0.4);
  expect(old).toBeLessThan(0.65);
  expect(hospitalAt(noon).courses).toEqual(courses);
});
