import type { Rule } from "./tree.ts";

/** A rule with small planted trees: `kept` must pass, and each of `broken` must give one finding that says `says`. */
export interface PlantedRule {
  title: string;
  rule: Rule;
  /** The rule with the settings of the planted trees, where it has any. */
  plantedRule?: Rule;
  kept: Record<string, string>;
  broken: { files: Record<string, string>; says: string }[];
}
