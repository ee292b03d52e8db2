import { knownOrganism } from "./known-organisms.ts";
import type { OrganismIdentity } from "./organism.ts";

const streptococcal =
  /^(strep|streptococcus|streptococci|beta|alpha|gamma|non|hemolytic|lancefield|group|grp|gp|species|spp|sp|presumptive|probable|[a-g])$/;
const ofGroup: Readonly<Record<string, string>> = { a: "streptococcus pyogenes", b: "streptococcus agalactiae" };
const staphylococcal =
  /^(staph|staphylococcus|staphylococci|species|spp|sp|coag|coagulase|neg|negative|non|not|s|saprophyticus|lugdunensis|aureus|presumptive|probable)$/;

/**
 * A streptococcus by its hemolysis and Lancefield group, or a staphylococcus by its coagulase, whatever the order of the
 * words; null for any other wording. Group D stays without a genus: it may be an enterococcus. Common practice.
 */
export function coccus(text: string): OrganismIdentity | null {
  const words = text.split(" ").filter((word) => word !== "");
  if (words.every((word) => streptococcal.test(word)) && words.some((word) => word.startsWith("strep"))) {
    return streptococcusOf(words);
  }
  const has = (start: string) => words.some((word) => word.startsWith(start));
  const isCoagulaseNegative =
    words.every((word) => staphylococcal.test(word)) && has("staph") && has("coag") && has("neg");
  return isCoagulaseNegative ? knownOrganism("coagulase negative staphylococci") : null;
}

function streptococcusOf(words: readonly string[]): OrganismIdentity | null {
  if (words.includes("non") && !words.includes("hemolytic")) return null;
  const [group, ...more] = words.filter((word) => /^[a-g]$/.test(word));
  if (more.length > 0) return knownOrganism("streptococcus");
  if (group === "d") return { key: "group d streptococcus", group: "bacterium", genus: null };
  if (group === undefined && words.includes("alpha")) return knownOrganism("viridans group streptococci");
  return knownOrganism(ofGroup[group ?? ""] ?? "streptococcus");
}
