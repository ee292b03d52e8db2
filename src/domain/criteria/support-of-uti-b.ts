import { urineFindings } from "../../../shared/culture-words.ts";
import { dayListWords, dayWords } from "./in-words.ts";
import { sameOrganism } from "./match-organism.ts";
import { isSettled } from "./matching-blood.ts";
import { reaches } from "./read-count.ts";
import type { CriterionFacts } from "./rule-kinds.ts";
import { isTooLate } from "./signs-in-window.ts";
import type { FindingInUrine, GrownOrganism, Specimen } from "./surveillance-timeline.ts";

const fewestCellsPerMm3 = 10;
const repeatedCfuPerMl = 100;
const mostUnderTreatmentCfuPerMl = 100_000;

/** What supports UTI-B in a window. Where it does so only perhaps there is something to look up. */
export interface Support {
  readonly words: string;
  /** null: it surely does. */
  readonly lookUp: string | null;
}

/**
 * What supports an infection without a usable culture: a finding, the same uropathogen in two cultures, or few of a
 * single one under effective treatment; null when nothing can. A report that is not final, a count that is missing and
 * an organism of which nobody said what it is may still support it. Source: HAI-Net, 2017, UTI-B (criterion D1).
 */
export function supportOf({ world, window }: CriterionFacts): Support | null {
  const isIn = (day: number) => day >= window.usableFrom && day <= window.last && !isTooLate(world, day);
  const findings = world.timeline.findings.filter(({ present, when }) => present && isIn(when.day));
  const supporting = findings.find(supports);
  if (supporting) {
    const { finding, when } = supporting;
    return { words: `${urineFindings[finding].toLowerCase()} on ${dayWords(when.day)}`, lookUp: null };
  }
  const cultures = world.timeline.specimens
    .filter(({ kind, method, status, collected }) => {
      return kind === "urine" && method === "culture" && status !== "withdrawn" && isIn(collected.day);
    })
    .sort((a, b) => a.collected.day - b.collected.day);
  const isTreated = findings.some(({ finding }) => finding === "effective-antimicrobial");
  return supportOfCultures(cultures, isTreated);
}

function supports({ finding, cellsPerMm3 }: FindingInUrine): boolean {
  if (finding === "effective-antimicrobial") return false;
  return finding !== "pyuria" || cellsPerMm3 === null || cellsPerMm3 >= fewestCellsPerMm3;
}

function supportOfCultures(cultures: readonly Specimen[], isTreated: boolean): Support | null {
  const treated = isTreated ? cultures : [];
  if (pairsOf(cultures, (a, b) => isSame(a, b) === true).length > 0)
    return { words: "the same uropathogen in two cultures", lookUp: null };
  if (treated.some((one) => hasFew(one) === true))
    return { words: "a single uropathogen under effective treatment", lookUp: null };
  const open = new Set([
    ...pairsOf(cultures, (a, b) => isSame(a, b) === null),
    ...treated.filter((one) => hasFew(one) === null),
  ]);
  if (open.size === 0) return null;
  const hanging = cultures.filter((one) => open.has(one) && isOpen(one));
  const days = dayListWords(hanging.map(({ collected }) => collected.day));
  const lookUp = hanging.some((one) => !isSettled(one))
    ? "Wait for the laboratory's final report."
    : `Ask the laboratory what grew on ${days}, and how much.`;
  return { words: `what supports it depends on the urine culture of ${days}`, lookUp };
}

/** Every specimen that makes such a pair with another. */
function pairsOf(cultures: readonly Specimen[], isPair: (a: Specimen, b: Specimen) => boolean): Specimen[] {
  return cultures.filter((a) => cultures.some((b) => a !== b && isPair(a, b)));
}

/** Yes or no; null: it depends on what is not known. */
type Answer = boolean | null;

/** Yes where one is, else open where one is. */
function anyOf(answers: readonly Answer[]): Answer {
  if (answers.includes(true)) return true;
  return answers.includes(null) ? null : false;
}

/** No where one is, else open where one is. */
function allOf(answers: readonly Answer[]): Answer {
  if (answers.includes(false)) return false;
  return answers.includes(null) ? null : true;
}

/** Whether two cultures grew the same uropathogen, enough of it in both. */
function isSame(a: Specimen, b: Specimen): Answer {
  if (!isSettled(a) || !isSettled(b)) return mayGrow(a) && mayGrow(b) ? null : false;
  return anyOf(a.organisms.flatMap((one) => b.organisms.map((other) => sameUropathogen(one, other))));
}

function sameUropathogen(a: GrownOrganism, b: GrownOrganism): Answer {
  const isNameless = a.identity.group === null || b.identity.group === null;
  const alike = isNameless ? null : sameOrganism(a.identity, b.identity);
  return allOf([alike, grownEnough(a), grownEnough(b)]);
}

/** Whether an organism is a uropathogen of which at least 100 per ml grew. */
function grownEnough(organism: GrownOrganism): Answer {
  return allOf([isUropathogen(organism), isAtLeast(organism, repeatedCfuPerMl)]);
}

/** Gram-negative or Staphylococcus saprophyticus; open for a bacterium, or what nobody has named, that may be one. */
function isUropathogen({ identity }: GrownOrganism): Answer {
  const { group, isUropathogen: listed } = identity;
  return group === null || group === "bacterium" ? (listed ?? null) : false;
}

function isAtLeast({ count }: GrownOrganism, limitCfuPerMl: number): Answer {
  const reached = reaches(count, limitCfuPerMl);
  if (reached === "yes") return true;
  return reached === "no" ? false : null;
}

function mayGrow(one: Specimen): boolean {
  return !isSettled(one) || one.organisms.some((organism) => grownEnough(organism) !== false);
}

/** Whether a culture grew a single uropathogen, not more than 100,000 per ml of it; "at least 100,000" is more. */
function hasFew(one: Specimen): Answer {
  if (!isSettled(one)) return null;
  if (new Set(one.organisms.map(({ identity }) => identity.key)).size !== 1) return false;
  return allOf(one.organisms.flatMap((organism) => [isUropathogen(organism), isFew(organism)]));
}

function isFew(organism: GrownOrganism): Answer {
  if (isAtLeast(organism, mostUnderTreatmentCfuPerMl + 1) === false) return true;
  return isAtLeast(organism, mostUnderTreatmentCfuPerMl) === true ? false : null;
}

/** Whether what a culture grew may still be told otherwise. */
function isOpen(one: Specimen): boolean {
  return !isSettled(one) || hasFew(one) === null || one.organisms.some((organism) => grownEnough(organism) === null);
}
