import { expect, it } from "vitest";
import type { SpecimenStatus } from "../../../shared/culture-words.ts";
import { emptyOrganismFaults } from "../../../src/domain/intake/empty-organism.ts";

type Line = Parameters<typeof emptyOrganismFaults>[0];
const line = (status: SpecimenStatus, said: Partial<Line> = {}): Line => ({
  ...{ status, organism: null, group: null, count: null },
  ...said,
});
const isRefused = (one: Line, emptyOrganism: "reject" | "no-growth") =>
  emptyOrganismFaults(one, { emptyOrganism, midnight: "time" }).map(({ code, pointer }) => `${code} ${pointer}`);
const refused = ["organism-missing /organism"];

it.each<[SpecimenStatus, Partial<Line>, string[], string[]]>([
  ["final", {}, refused, []],
  ["corrected", {}, refused, []],
  ["preliminary", {}, [], []],
  ["pending", {}, [], []],
  ["withdrawn", {}, [], []],
  ["final", { organism: "No growth" }, [], []],
  ["final", { organism: "Escherichia coli", count: ">100000" }, [], []],
  // A count without an organism is a slip, whatever the source means by an empty organism.
  ["final", { count: ">100,000" }, refused, refused],
  ["preliminary", { count: "heavy growth" }, refused, refused],
  ["corrected", { count: "10^5" }, refused, refused],
  // A column that says so in words.
  ["final", { count: "No growth at 48 hours" }, [], []],
  ["final", { count: "0" }, [], []],
  ["final", { group: "no-growth" }, [], []],
  ["final", { group: "bacterium" }, refused, refused],
])("%s with %j: refused for %j; where an empty organism means no growth: %j", (status, said, usual, asNoGrowth) => {
  expect(isRefused(line(status, said), "reject")).toEqual(usual);
  expect(isRefused(line(status, said), "no-growth")).toEqual(asNoGrowth);
});
