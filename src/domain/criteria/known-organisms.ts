import type { OrganismGroup } from "../../../shared/culture-words.ts";
import { plainOrganismName } from "../../../shared/plain-organism-name.ts";
import type { OrganismIdentity } from "./organism.ts";
import { commensalGenera, coveringNames, viridansStreptococci } from "./organism-groups.ts";
import { fungi, gramNegative, gramPositive, otherBacteria, otherOrganisms } from "./organism-list.ts";
import { otherNames } from "./organism-names.ts";

type Known = OrganismIdentity & { readonly group: OrganismGroup };
const viridans = new Set(viridansStreptococci.split(", "));
const byName = new Map<string, Known>();

for (const [list, group, uropathogens] of [
  [gramNegative, "bacterium", true],
  [gramPositive, "bacterium", false],
  [otherBacteria, "bacterium", false],
  [fungi, "yeast-or-mold", false],
  [otherOrganisms, "other", false],
] as const) {
  for (const line of list.trim().split("\n")) addGenus(line, group, uropathogens);
}
for (const [key, { group, genus, commensal }] of Object.entries(coveringNames)) {
  byName.set(plainOrganismName(key), { key, group, genus, isCommensal: commensal });
}

function addGenus(line: string, group: OrganismGroup, isUropathogen: boolean): void {
  const [genus = "", species = ""] = line.split(":");
  const add = (key: string, one: string | null, uropathogen: boolean) => {
    const isCommensal = isCommensalOf(genus, one);
    byName.set(plainOrganismName(key), { key, group, genus, isCommensal, isUropathogen: uropathogen });
  };
  add(genus, null, isUropathogen);
  for (const one of species.split(",").map((name) => name.trim())) {
    if (one === "") continue;
    const key = `${genus} ${one}`;
    add(key, one, isUropathogen || key === "Staphylococcus saprophyticus");
  }
}

/** A genus whose species was not identified is a commensal only where all of its species are. */
export function isCommensalOf(genus: string, species: string | null): boolean {
  if (genus === "Streptococcus") return species !== null && viridans.has(species);
  const exceptions = commensalGenera[genus];
  if (exceptions === undefined) return false;
  return species === null ? exceptions.length === 0 : !exceptions.includes(species);
}

/** The organism of exactly this plain name: of the list, an older name or an abbreviation of the bench. */
export function knownOrganism(text: string): Known | null {
  return byName.get(plainOrganismName(otherNames.get(text) ?? text)) ?? null;
}

/** Every organism of the list once. */
export const knownOrganisms: readonly Known[] = [...byName.values()];

/** Every plain name of a species or of anything else on the list, older ones too. */
export const knownNames: readonly string[] = [...byName.keys(), ...otherNames.keys()];
