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

/** What supports UTI-B in a window: surely, perhaps (with what to look up), or nothing. */
export type Support =
  | { readonly status: "there"; readonly words: string }
  | { readonly status: "perhaps"; readonly words: string; readonly lookUp: string }
  | { readonly status: "none" };

/**
 * What supports an infection without a usable culture: a finding, the same uropathogen in two cultures, or few of a
 * single one under effective treatment. A report that is not final, a count that is missing and an organism of which
 * nobody said what it is may still support it. Source: HAI-Net, 2017, UTI-B (criterion D1).
 */
export function supportOf({ world, window }: CriterionFacts): Support {
  const isIn = (day: number) => day >= window.usableFrom && day <= window.last && !isTooLate(world, day);
  const findings = world.timeline.findings.filter(({ present, when }) => present && isIn(when.day));
  const supporting = findings.find(supports);
  if (supporting) {
    return {
      status: "there",
      words: `${urineFindings[supporting.finding].toLowerCase()} on ${dayWords(supporting.when.day)}`,
    };
  }
  const cultures = world.timeline.specimens
    .filter(({ kind, method, status, collected }) => {
      return kind === "urine" && method === "culture" && status !== "withdrawn" && isIn(collected.day);
    })
    .sort((a, b) => a.collected.day - b.collected.day || a.id - b.id);
  const isTreated = findings.some(({ finding }) => finding === "effective-antimicrobial");
  return supportOfCultures(cultures, isTreated);
}

function supports({ finding, cellsPerMm3 }: FindingInUrine): boolean {
  if (finding === "effective-antimicrobial") return false;
  return finding !== "pyuria" || cellsPerMm3 === null || cellsPerMm3 >= fewestCellsPerMm3;
}

function supportOfCultures(cultures: readonly Specimen[], isTreated: boolean): Support {
  const repeated = pairsOf(cultures, (a, b) => isSame(a, b) === "yes");
  if (repeated.length > 0) return { status: "there", words: "the same uropathogen in two cultures" };
  const few = isTreated ? cultures.filter((one) => hasFew(one) === "yes") : [];
  if (few.length > 0) return { status: "there", words: "a single uropathogen under effective treatment" };
  const open = new Set(
    [
      ...pairsOf(cultures, (a, b) => isSame(a, b) === "perhaps"),
      ...(isTreated ? cultures.filter((one) => hasFew(one) === "perhaps") : []),
    ].filter(isOpen),
  );
  if (open.size === 0) return { status: "none" };
  const days = dayListWords([...open].map(({ collected }) => collected.day));
  const isWaiting = [...open].some((one) => !isSettled(one));
  return {
    status: "perhaps",
    words: `what supports it hangs on the urine culture of ${days}`,
    lookUp: isWaiting
      ? "Wait for the laboratory's final report."
      : `Ask the laboratory what grew on ${days}, and how much.`,
  };
}

/** Every specimen that makes such a pair with another. */
function pairsOf(cultures: readonly Specimen[], isPair: (a: Specimen, b: Specimen) => boolean): Specimen[] {
  return cultures.filter((a) => cultures.some((b) => a !== b && isPair(a, b)));
}

type Answer = "yes" | "perhaps" | "no";

/** Whether two cultures grew the same uropathogen, enough of it in both. */
function isSame(a: Specimen, b: Specimen): Answer {
  if (!isSettled(a) || !isSettled(b)) return mayGrow(a) && mayGrow(b) ? "perhaps" : "no";
  const answers = a.organisms.flatMap((one) => b.organisms.map((other) => sameUropathogen(one, other)));
  if (answers.includes("yes")) return "yes";
  return answers.includes("perhaps") ? "perhaps" : "no";
}

function sameUropathogen(a: GrownOrganism, b: GrownOrganism): Answer {
  const grown = [grownEnough(a), grownEnough(b)];
  if (grown.includes("no")) return "no";
  const isNameless = a.identity.group === null || b.identity.group === null;
  if (!isNameless && !sameOrganism(a.identity, b.identity)) return "no";
  return isNameless || grown.includes("perhaps") ? "perhaps" : "yes";
}

/** Whether an organism is a uropathogen of which at least 100 per ml grew. */
function grownEnough({ identity, count }: GrownOrganism): Answer {
  const reached = reaches(count, repeatedCfuPerMl);
  if (identity.isUropathogen === false || !mayBeBacterium(identity.group) || reached === "no") return "no";
  return reached === "yes" && identity.isUropathogen === true ? "yes" : "perhaps";
}

function mayBeBacterium(group: GrownOrganism["identity"]["group"]): boolean {
  return group === null || group === "bacterium";
}

function mayGrow(one: Specimen): boolean {
  return !isSettled(one) || one.organisms.some((organism) => grownEnough(organism) !== "no");
}

/** Whether a culture grew a single uropathogen, not more than 100,000 per ml of it; "at least 100,000" is more. */
function hasFew(one: Specimen): Answer {
  if (!isSettled(one)) return "perhaps";
  if (new Set(one.organisms.map(({ identity }) => identity.key)).size !== 1) return "no";
  const answers = one.organisms.map(grewFew);
  if (answers.includes("no")) return "no";
  return answers.includes("perhaps") ? "perhaps" : "yes";
}

function grewFew({ identity, count }: GrownOrganism): Answer {
  if (identity.isUropathogen === false || !mayBeBacterium(identity.group)) return "no";
  const isFew = reaches(count, mostUnderTreatmentCfuPerMl + 1) === "no";
  if (isFew && identity.isUropathogen === true) return "yes";
  return isFew || reaches(count, mostUnderTreatmentCfuPerMl) !== "yes" ? "perhaps" : "no";
}

/** Whether what a culture grew may still be told otherwise. */
function isOpen(one: Specimen): boolean {
  return (
    !isSettled(one) ||
    one.organisms.some((organism) => grownEnough(organism) === "perhaps") ||
    hasFew(one) === "perhaps"
  );
}
