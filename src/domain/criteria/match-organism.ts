import type { OrganismGroup } from "../../../shared/culture-words.ts";
import { plainOrganismName } from "../../../shared/plain-organism-name.ts";
import type { OrganismIdentity } from "./organism.ts";
import {
  commensalGenera,
  coveringNames,
  fungi,
  gramNegative,
  gramPositive,
  otherBacteria,
  otherOrganisms,
  viridansStreptococci,
} from "./organism-list.ts";
import { groupNames, otherNames } from "./organism-names.ts";

const viridans = new Set(viridansStreptococci.split(", "));
const byName = new Map<string, OrganismIdentity>();

/** The commensal groups keep their flag although they are no genus. */
const commensalCovers = new Set(["Coagulase-negative staphylococci", "Viridans group streptococci", "Diphtheroids"]);

for (const [list, group, uropathogens] of [
  [gramNegative, "bacterium", true],
  [gramPositive, "bacterium", false],
  [otherBacteria, "bacterium", false],
  [fungi, "yeast-or-mold", false],
  [otherOrganisms, "other", false],
] as const) {
  for (const line of list.trim().split("\n")) addGenus(line, group, uropathogens);
}
for (const [key, { group }] of Object.entries(coveringNames)) {
  byName.set(plainOrganismName(key), { key, group, genus: null, isCommensal: commensalCovers.has(key) });
}

function addGenus(line: string, group: OrganismGroup, isUropathogen: boolean): void {
  const [genus = "", species = ""] = line.split(":");
  byName.set(plainOrganismName(genus), {
    key: genus,
    group,
    genus,
    isCommensal: isCommensal(genus, null),
    isUropathogen,
  });
  for (const one of species.split(",").map((name) => name.trim())) {
    if (one === "") continue;
    const key = `${genus} ${one}`;
    const uropathogen = isUropathogen || key === "Staphylococcus saprophyticus";
    byName.set(plainOrganismName(key), {
      key,
      group,
      genus,
      isCommensal: isCommensal(genus, one),
      isUropathogen: uropathogen,
    });
  }
}

/** A genus whose species was not told is a commensal only where all of its species are. */
function isCommensal(genus: string, species: string | null): boolean {
  if (genus === "Streptococcus") return species !== null && viridans.has(species);
  const exceptions = commensalGenera[genus];
  if (exceptions === undefined) return false;
  return species === null ? exceptions.length === 0 : !exceptions.includes(species);
}

/**
 * The organism of a name as a laboratory wrote it, or null for one that is not on the list: somebody then chooses its
 * group. A strange species of a known genus is that species of the genus; nothing else is guessed.
 */
export function matchOrganism(name: string): OrganismIdentity | null {
  const text = plainOrganismName(name);
  const group = groupNames[text];
  if (group) return { key: text, group, genus: null };
  const known = byName.get(plainOrganismName(otherNames[text] ?? text));
  if (known) return known;
  const [first = "", second, ...rest] = text.split(" ");
  const genus = byName.get(first);
  if (!genus || genus.genus === null || !second || rest.length > 0 || !/^[a-z]{4,}$/.test(second)) return null;
  return { ...genus, key: `${genus.key} ${second}`, isCommensal: isCommensal(genus.key, second) };
}

/** Every organism of the list once, by name. */
export function listedOrganisms(): (OrganismIdentity & { readonly group: OrganismGroup })[] {
  return [...byName.values()]
    .flatMap((one) => (one.group === null ? [] : [{ ...one, group: one.group }]))
    .sort((a, b) => (a.key < b.key ? -1 : 1));
}

/** Other names that are read without anybody choosing a group: abbreviations, older names, groups. In their plain form. */
export function otherKnownNames(): string[] {
  return [...Object.keys(otherNames), ...Object.keys(groupNames)].sort();
}

/**
 * Whether two names can be the same organism: the same name, a genus and one of its species, or a name that covers the
 * other. Two different species never match, nor does a name without a genus that covers nothing.
 * Source: CDC Patient Safety Component Manual, chapter 4 (a genus matches its species), from memory.
 */
export function sameOrganism(a: OrganismIdentity, b: OrganismIdentity): boolean {
  if (a.key === b.key) return true;
  if (a.genus !== null && a.genus === b.genus) return a.key === a.genus || b.key === b.genus;
  return covers(a, b) || covers(b, a);
}

function covers(wide: OrganismIdentity, narrow: OrganismIdentity): boolean {
  const list = coveringNames[wide.key]?.covers ?? [];
  return list.includes(narrow.key) || (narrow.genus !== null && list.includes(narrow.genus));
}
