import type { OrganismGroup } from "../../../shared/culture-words.ts";
import type { OrganismIdentity } from "./organism.ts";
import { countText, type ReadCount, reaches } from "./read-count.ts";
import type { UsableCulture } from "./rule-kinds.ts";
import type { GrownOrganism, Specimen } from "./surveillance-timeline.ts";
import type { World } from "./world.ts";

/** Colony-forming units per milliliter that a pathogen must reach. */
export const limitCfuPerMl = 100_000;
export const mostSpecies = 2;
/** Combinations of answers that are tried at most; a culture with more of them waits for a person. */
const mostCombinations = 2_000;

/** Something that is not known of a culture, with every answer that it can get. */
export interface CultureQuestion {
  /** What is not known, as part of a sentence: `E. coli has no count`. */
  readonly gap: string;
  /** What decides: `How much E. coli grew`. */
  readonly subject: string;
  readonly lookUp: string;
  readonly options: readonly AnswerOption[];
}

interface AnswerOption {
  readonly words: string;
  readonly settle: (organism: GrownOrganism) => GrownOrganism;
}

/** A culture as it can turn out: what of it is a pathogen, or null where it cannot be used then. */
export interface PossibleCulture {
  readonly culture: UsableCulture | null;
  /** The answers, one for each question by its place among the options, that make it so. */
  readonly answers: readonly (readonly number[])[];
}

type Groups = readonly OrganismGroup[];

/** What is not known of a culture and could matter: names without a group, and counts of what may be a pathogen. */
export function questionsOf({ organisms }: Specimen, world: World, groups: Groups): CultureQuestion[] {
  const unknown = new Map(
    organisms.filter(({ identity }) => identity.group === null).map((one) => [one.identity.key, one]),
  );
  const names = [...unknown.values()].map((one, i, all) => nameQuestion(one, organisms, all.slice(0, i), world));
  const counts = organisms
    .filter(({ identity: { group } }) => group === null || groups.includes(group))
    .flatMap((one) => countQuestion(one));
  return [...names, ...counts];
}

/** Every way in which a culture can turn out, each once; null when there are too many to try. */
export function possibleCultures(
  specimen: Specimen,
  questions: readonly CultureQuestion[],
  { world, groups }: { readonly world: World; readonly groups: Groups },
): PossibleCulture[] | null {
  const total = questions.reduce((product, { options }) => product * options.length, 1);
  if (total > mostCombinations) return null;
  const found = new Map<string, PossibleCulture & { answers: number[][] }>();
  for (let number = 0; number < total; number += 1) {
    const answers = answersOf(questions, number);
    const organisms = specimen.organisms.map((one) => settled(one, questions, answers));
    const pathogens = pathogensOf(organisms, world, groups);
    const key = JSON.stringify(pathogens?.map(({ identity }) => [identity.key, identity.genus]).sort() ?? null);
    const known = found.get(key);
    if (known) known.answers.push(answers);
    else found.set(key, { culture: pathogens && { specimen, pathogens }, answers: [answers] });
  }
  return [...found.values()];
}

function answersOf(questions: readonly CultureQuestion[], number: number): number[] {
  let left = number;
  return questions.map(({ options }) => {
    const answer = left % options.length;
    left = Math.floor(left / options.length);
    return answer;
  });
}

function settled(organism: GrownOrganism, questions: readonly CultureQuestion[], answers: readonly number[]) {
  return questions.reduce((one, { options }, i) => options[answers[i] ?? 0]?.settle(one) ?? one, organism);
}

/** The pathogens of a culture of which everything is known; null when it cannot be used. */
function pathogensOf(organisms: readonly GrownOrganism[], world: World, groups: Groups): GrownOrganism[] | null {
  if (organisms.some(({ identity }) => identity.group === "mixed-flora")) return null;
  if (speciesOf(organisms, world) > mostSpecies) return null;
  const pathogens = organisms.filter(({ identity: { group }, count }) => {
    return group !== null && groups.includes(group) && reaches(count, limitCfuPerMl) === "yes";
  });
  return pathogens.length === 0 ? null : pathogens;
}

/** How many species the edition counts in these organisms. */
export function speciesOf(organisms: readonly GrownOrganism[], { edition: { options } }: World): number {
  const counted = organisms.filter(
    ({ identity: { group } }) => options.yeastCountsAsSpecies || group !== "yeast-or-mold",
  );
  if (options.sameSpeciesTwice === "two-organisms") return counted.length;
  return new Set(counted.map(({ identity }) => identity.key)).size;
}

const groupWords: readonly (readonly [OrganismGroup, string])[] = [
  ["bacterium", "a bacterium"],
  ["yeast-or-mold", "a yeast or mold"],
  ["other", "a parasite, virus or other organism"],
  ["mixed-flora", "mixed flora"],
];

/** A name without a group may be anything, also what grew beside it or in blood under its usual name. */
function nameQuestion(
  { name, identity: { key } }: GrownOrganism,
  organisms: readonly GrownOrganism[],
  earlier: readonly GrownOrganism[],
  world: World,
): CultureQuestion {
  const become = (words: string, identity: OrganismIdentity): AnswerOption => ({
    words,
    settle: (one) => (one.identity.key === key && one.identity.group === null ? { ...one, identity } : one),
  });
  const inBlood = world.timeline.specimens
    .filter(({ kind }) => kind === "blood" && world.edition.bloodstream !== null)
    .flatMap((blood) => blood.organisms.filter(({ identity }) => identity.group === "bacterium"));
  const others = new Map(
    [...organisms, ...inBlood].filter(({ identity }) => identity.group !== null).map((one) => [one.identity.key, one]),
  );
  others.delete(key);
  return {
    gap: `“${name}” has no group`,
    subject: `What “${name}” is`,
    lookUp: `Choose a group for “${name}”.`,
    options: [
      ...groupWords.map(([group, words]) => become(words, { key, group, genus: null })),
      ...[...others.values()].map((one) => become(`the same as ${one.name}`, one.identity)),
      ...earlier.map((one) =>
        become(`the same bacterium as “${one.name}”`, { key: one.identity.key, group: "bacterium", genus: null }),
      ),
    ],
  };
}

function countQuestion({ id, name, count }: GrownOrganism): CultureQuestion[] {
  const reached = reaches(count, limitCfuPerMl);
  if (reached === "yes" || reached === "no") return [];
  const counted = (words: string, relation: ">=" | "<"): AnswerOption => {
    const settledCount: ReadCount = { kind: "bound", relation, cfuPerMl: limitCfuPerMl };
    return { words, settle: (one) => (one.id === id ? { ...one, count: settledCount } : one) };
  };
  return [
    {
      gap:
        reached === "unknown"
          ? `${name} has ${countText(count)}`
          : `${name} has ${countText(count)}, which may be less than 100,000 or not`,
      subject: `How much ${name} grew`,
      lookUp:
        reached === "unknown"
          ? `Ask the laboratory how much ${name} grew.`
          : `Ask the laboratory whether at least 100,000 CFU/ml of ${name} grew.`,
      // The first combination is the one that a usable culture is told by: it claims the fewest pathogens.
      options: [counted("less", "<"), counted("at least 100,000 CFU/ml", ">=")],
    },
  ];
}
