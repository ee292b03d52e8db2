import type { Fault } from "../../../shared/problems.ts";
import type { SourceSettings } from "../../../shared/source-settings.ts";
import { saysNoGrowth } from "../criteria/index.ts";
import type { IntakeValues } from "./intake-line.ts";

type Said = Pick<IntakeValues["specimens.csv"], "status" | "organism" | "group" | "count">;

/**
 * What is wrong with a line of specimens.csv without an organism: `organism-missing` for a report that names a count, and
 * for a final one that does not say in words that nothing grew. It may say so in the column organism, group or count; or
 * the source says that an empty organism means it. A preliminary report without a count decides nothing and may wait.
 */
export function emptyOrganismFaults(line: Said, { emptyOrganism }: SourceSettings): Fault[] {
  const { status, organism, group, count } = line;
  if (organism !== null || status === "pending" || status === "withdrawn") return [];
  const saysNone = count !== null && saysNoGrowth(count);
  if (saysNone || (count === null && (group === "no-growth" || (group === null && emptyOrganism === "no-growth"))))
    return [];
  if (count === null && status === "preliminary") return [];
  const what =
    count === null ? "An empty organism is not taken for no growth." : "The line has a count and no organism.";
  return [{ code: "organism-missing", pointer: "/organism", detail: what }];
}
