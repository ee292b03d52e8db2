import { expect, it } from "vitest";
import { type Edition, rulesOf } from "../../../src/domain/criteria/index.ts";
import { type EditionFamily, editionInForce, editionNamed, editions } from "../../../src/domain/editions/index.ts";
import { dayOf } from "../../reference/day-text.ts";

it.each<[EditionFamily, string, string]>([
  ["us", "2024-01-01", "us-2024"],
  ["us", "2026-03-10", "us-2024"],
  ["us", "2019-03-10", "us-2024"],
  ["ecdc", "2024-03-10", "ecdc-2017"],
])("%s on %s is %s", (family, day, id) => {
  expect(editionInForce(family, dayOf(day)).id).toBe(id);
});

it("finds an edition by its id", () => {
  expect([editionNamed("ecdc-2017")?.id, editionNamed("us-1999")]).toEqual(["ecdc-2017", undefined]);
});

it.each(editions.map((edition: Edition) => [edition.id, edition] as const))(
  "%s: rules in force with it, and open points with a reason",
  (_id, edition) => {
    for (const { id, inForce } of rulesOf(edition)) {
      const isEarly = inForce.from <= edition.inForce.from;
      expect(isEarly || edition.others.some((rule) => rule.id === id), id).toBe(true);
    }
    expect(edition.openPoints.length).toBeGreaterThan(0);
    const named = edition.openPoints.map(({ option }) => option);
    expect(new Set(named).size).toBe(named.length);
    for (const { option, why, otherReading } of edition.openPoints) {
      expect(edition.options).toHaveProperty(option);
      expect([why, otherReading].every((text) => text.length > 3)).toBe(true);
    }
  },
);
