import type { OrganismGroup } from "../../../shared/culture-words.ts";
import { plainOrganismName } from "../../../shared/plain-organism-name.ts";
import { editDistance } from "./edit-distance.ts";
import { isCommensalOf, knownNames, knownOrganism, knownOrganisms } from "./known-organisms.ts";
import { coccus } from "./name-of-coccus.ts";
import type { OrganismIdentity } from "./organism.ts";
import { coveringNames } from "./organism-groups.ts";
import { genusWords, otherNames } from "./organism-names.ts";
import { withoutBrackets, withoutQualifiers } from "./organism-qualifiers.ts";
import { classOf } from "./wording-class.ts";

/** A count with its unit, before a name or after it. The count column decides, not the name. */
const written =
  "[<>=≥≤ ]*\\d[\\d,. ^⁰-⁹¹²³xek×*-]*(to [\\d,. ^xek*-]+)?(cfus?|col|colonies|organisms|orgs?) ?(\\/|per) ?(ml|l)\\.?";
const counts = new RegExp(`^${written}( of)?[,:;-]? |[ ,:;-]+\\(?${written}\\)?$`, "g");

/** A wording in plain form with the short words of reports written out. */
function spelled(name: string): string {
  return plainOrganismName(name.trim().toLowerCase().replace(counts, ""))
    .replace(/\bneg\b/g, "negative")
    .replace(/\bpos\b/g, "positive")
    .replace(/\b(gram|gm) \+/g, "gram positive")
    .replace(/\bgm (?=positive|negative)/g, "gram ")
    .replace(/β/g, "beta")
    .replace(/α/g, "alpha");
}

/** Whether a count column says that nothing grew: `NG`, `none`, `0`. */
export function saysNoGrowth(count: string): boolean {
  return /^(0|none)$/i.test(count.trim()) || matchOrganism(count)?.group === "no-growth";
}

/**
 * The organism or class of a laboratory's wording; null for what is not certain: a person then chooses. In this order:
 * exact name, older name, abbreviation, class without a genus, the same without what says how sure, how much, which
 * strain or how resistant, shortened genus or species, an unlisted species of a known genus. Spelling never decides:
 * what is one or two letters away from a species of the list is no other species.
 */
export function matchOrganism(name: string): OrganismIdentity | null {
  const text = spelled(name);
  // "No growth <1,000 CFU/mL" leaves open what grew below that.
  const isLimited = name.trim().toLowerCase().search(counts) >= 0 && classOf(text)?.group === "no-growth";
  if (isLimited) return null;
  const unbracketed = text.replace(/ ?[()] ?/g, " ").trim();
  const asWritten = exactly(text) ?? exactly(unbracketed) ?? coccus(unbracketed);
  if (asWritten || text === "") return asWritten;
  const bare = withoutBrackets(text);
  if (bare === null || bare === "") return null;
  const short = withoutQualifiers(bare);
  const found =
    exactly(bare) ?? coccus(bare) ?? exactly(short) ?? eitherSpecies(short) ?? shortened(short) ?? unlisted(short);
  return found !== null && isWeakened(found, bare) ? null : found;
}

/**
 * Whether what was left out of a wording decides: "2 gram-negative rods" are two organisms, and "negative for MRSA" and
 * "mixed ESBL" say nothing of other growth.
 */
function isWeakened({ group, genus }: OrganismIdentity, bare: string): boolean {
  if (group === "no-growth" || group === "mixed-flora") return exactly(bare) === null;
  return genus === null && /^\d/.test(bare);
}

function exactly(text: string): OrganismIdentity | null {
  const known = knownOrganism(text);
  if (known) return known;
  const found = classOf(text);
  return found && (found.key === "Candida" ? knownOrganism("candida") : { ...found, genus: null });
}

/** "Candida albicans/dubliniensis": one of two species of a genus is that genus. */
function eitherSpecies(text: string): OrganismIdentity | null {
  const [, genus = "", first = "", other = ""] = /^([a-z]+) ([a-z]+) ?\/ ?(?:[a-z]+ )?([a-z]+)$/.exec(text) ?? [];
  const both = [first, other].map((species) => exactly(`${genus} ${species}`) ?? shortened(`${genus} ${species}`));
  const [a, b] = both;
  if (!a?.genus || a.genus !== b?.genus) return null;
  return a.key === b.key ? a : knownOrganism(plainOrganismName(a.genus));
}

const speciesNames = knownNames
  .filter((name) => /^[a-z]+ [a-z]+$/.test(name))
  .map((name) => name.split(" ") as [string, string]);

/**
 * "Kleb pneumo", "Ps aeruginosa": the one species with such a beginning of genus and species; null where two have it. A
 * species that lacks its last letter alone is misspelled, not shortened.
 */
function shortened(text: string): OrganismIdentity | null {
  const [written = "", species = "", ...rest] = text.split(" ");
  if (rest.length > 0 || species === "") return genusWords[text] ? knownOrganism(genusWords[text] ?? "") : null;
  const genus = genusWords[written] ?? written;
  const isSpecies = (name: string) =>
    name === species ||
    (genus.length >= 3 && species.length >= 3 && species.length <= name.length - 2 && name.startsWith(species));
  const found = speciesNames.filter(([first, second]) => first.startsWith(genus) && isSpecies(second));
  const keys = new Map(found.map((pair) => knownOrganism(pair.join(" "))).map((one) => [one?.key, one]));
  const [only] = keys.values();
  return keys.size === 1 && only ? only : null;
}

/** Words that end like a species and are none. */
const noSpecies = /^(flora|bacteria|culture|media|alpha|beta|gamma|delta|various|previous|numerous|virus|status)$/;
const latin = /(ae|a|i|us|is|um|ans|ens|ax|ix|ex|or|er|oides)$/;

/** A species that is not listed, of a genus that is: Latin by its ending, and no misspelled species of the list. */
function unlisted(text: string): OrganismIdentity | null {
  const [first = "", species = "", ...rest] = text.split(" ");
  const genus = knownOrganism(genusWords[first] ?? first);
  if (!genus || genus.key !== genus.genus || rest.length > 0) return null;
  if (!/^[a-z]{4,}$/.test(species) || !latin.test(species) || noSpecies.test(species)) return null;
  const near = speciesNames.some(
    ([other, name]) => other === plainOrganismName(genus.key) && editDistance(name, species) <= 2,
  );
  return near ? null : { ...genus, key: `${genus.key} ${species}`, isCommensal: isCommensalOf(genus.key, species) };
}

/** Wordings without a genus to which a misspelled one is compared. */
const classNames = [
  "mixed flora",
  "mixed urogenital flora",
  "skin flora",
  "no growth",
  "gram negative rods",
  "gram positive cocci",
];

/**
 * What a wording that is not read may be meant to be: the one name of the list that is one letter away. It is offered to a
 * person and decides nothing. null where the wording is read, or where no name or more than one is that near.
 */
export function proposedOrganism(name: string): OrganismIdentity | null {
  if (matchOrganism(name)) return null;
  const text = withoutQualifiers(withoutBrackets(spelled(name)) ?? "");
  if (text.length < 5) return null;
  const near = [...knownNames, ...classNames].filter(
    (known) => Math.abs(known.length - text.length) < 2 && editDistance(known, text) === 1,
  );
  const [first = "", species = "", ...rest] = text.split(" ");
  const abbreviated = speciesNames.filter(
    ([genus, full]) =>
      rest.length === 0 && genus.startsWith(genusWords[first] ?? first) && editDistance(full, species) === 1,
  );
  const meant = [...near, ...abbreviated.map((pair) => pair.join(" "))].map((known) => exactly(known));
  const keys = new Map(meant.map((one) => [one?.key, one]));
  const [only] = keys.values();
  return keys.size === 1 && only ? only : null;
}

/** Every organism of the list once, by name. */
export function listedOrganisms(): (OrganismIdentity & { readonly group: OrganismGroup })[] {
  return knownOrganisms.toSorted((a, b) => (a.key < b.key ? -1 : 1));
}

/** Other names that are read without anybody choosing a group: abbreviations and older names. In their plain form. */
export function otherKnownNames(): string[] {
  return [...new Set([...otherNames.keys(), ...classNames, "yeast"])].sort();
}

/**
 * Whether two names can be the same organism: the same name, a genus and one of its species, or a name that covers the
 * other. Two different species never match, nor does a name without a genus that covers nothing.
 * Source: CDC Patient Safety Component Manual, chapter 4 (a genus matches its species), from memory.
 */
export function sameOrganism(a: OrganismIdentity, b: OrganismIdentity): boolean {
  if (a.key === b.key) return true;
  if (a.genus !== null && a.genus === b.genus && (a.key === a.genus || b.key === b.genus)) return true;
  return covers(a, b) || covers(b, a);
}

function covers(wide: OrganismIdentity, narrow: OrganismIdentity): boolean {
  const list = coveringNames[wide.key]?.covers ?? [];
  return list.includes(narrow.key) || (narrow.genus !== null && list.includes(narrow.genus));
}
