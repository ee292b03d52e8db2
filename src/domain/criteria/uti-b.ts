import { urineFindings } from "../../../shared/culture-words.ts";
import { dayWords } from "./in-words.ts";
import { cannotTell, failed, heldBySigns, windowWords } from "./judge-signs.ts";
import { isSettled } from "./matching-blood.ts";
import { reaches } from "./read-count.ts";
import type { CriterionFacts, CriterionRule, Verdict } from "./rule-kinds.ts";
import { isTooLate } from "./signs-in-window.ts";
import { ecdcD1, sinceEcdc2017 } from "./sources.ts";
import type { FindingInUrine, Specimen } from "./surveillance-timeline.ts";
import { lookUpSigns, nearestSign, signsWords, unknownSigns } from "./usable-signs.ts";
import { europeanSigns } from "./uti-a.ts";

const name = "UTI-B (symptomatic, not confirmed by culture)";
const fewestSigns = 2;
const fewestCellsPerMm3 = 10;
const repeatedCfuPerMl = 100;
const mostUnderTreatmentCfuPerMl = 100_000;

export const utiB: CriterionRule = {
  id: "uti-b",
  title: "UTI-B",
  says: "At least two of the signs of UTI-A and at least one of: dipstick positive for leukocyte esterase or nitrite, pyuria, microorganisms on a Gram stain, the same uropathogen of 100 per ml or more in two cultures, up to 100,000 per ml of a single uropathogen under effective treatment, a physician's diagnosis or treatment.",
  sources: [ecdcD1],
  inForce: sinceEcdc2017,
  examples: [
    {
      title: "Fever, urgency and pyuria, no culture",
      editionId: "ecdc-2017",
      story: {
        findings: [[10, "pyuria"]],
        signs: [
          { day: 10, sign: "38.2" },
          { day: 10, sign: "urgency" },
        ],
      },
      status: "held",
    },
    {
      title: "Only one sign",
      editionId: "ecdc-2017",
      story: { findings: [[10, "pyuria"]], signs: [{ day: 10, sign: "38.2" }] },
      status: "failed",
    },
    {
      title: "One sign, and nobody looked for the others",
      editionId: "ecdc-2017",
      story: { findings: [[10, "pyuria"]], signs: [{ day: 10, sign: "38.2" }], lookedFor: false },
      status: "cannot-tell",
    },
  ],
  judge,
};

function judge(facts: CriterionFacts): Verdict {
  const { anchor } = facts;
  const evidence = evidenceIn(facts);
  if (evidence === null)
    return failed(anchor.day, `${name} is not met: nothing supports it from ${windowWords(facts)}.`);
  const signs = facts.signs.present.filter(({ sign }) => europeanSigns.includes(sign));
  const kinds = new Set(signs.map(({ sign }) => sign));
  if (kinds.size >= fewestSigns)
    return heldBySigns(facts, name, signs, `, ${kinds.size} signs in all, and ${evidence}`);
  const unknown = unknownSigns(facts, europeanSigns).filter((sign) => !kinds.has(sign));
  if (kinds.size + unknown.length >= fewestSigns && unknown.length > 0) {
    const sentence = `${name} cannot be told yet: ${kinds.size} of at least ${fewestSigns} signs are recorded, and nobody recorded whether there was ${signsWords(unknown)}.`;
    return cannotTell(anchor.day, sentence, lookUpSigns(facts, unknown));
  }
  const sentence = `${name} is not met: ${kinds.size} of at least ${fewestSigns} signs were there.`;
  return failed(anchor.day, sentence, nearestSign(facts, europeanSigns));
}

/** What supports an infection without a usable culture, in words; null when nothing does. */
function evidenceIn(facts: CriterionFacts): string | null {
  const { world, window } = facts;
  const isIn = (day: number) => day >= window.usableFrom && day <= window.last && !isTooLate(world, day);
  const findings = world.timeline.findings.filter(({ present, when }) => present && isIn(when.day));
  const supporting = findings.find(supports);
  if (supporting) return `${urineFindings[supporting.finding].toLowerCase()} on ${dayWords(supporting.when.day)}`;
  const cultures = world.timeline.specimens.filter(
    (one) => one.kind === "urine" && one.method === "culture" && isSettled(one) && isIn(one.collected.day),
  );
  if (isRepeated(cultures)) return "the same uropathogen in two cultures";
  const isTreated = findings.some(({ finding }) => finding === "effective-antimicrobial");
  return isTreated && cultures.some(hasFew) ? "a single uropathogen under effective treatment" : null;
}

function supports({ finding, cellsPerMm3 }: FindingInUrine): boolean {
  if (finding === "effective-antimicrobial") return false;
  return finding !== "pyuria" || cellsPerMm3 === null || cellsPerMm3 >= fewestCellsPerMm3;
}

function isRepeated(cultures: readonly Specimen[]): boolean {
  const grown = cultures.flatMap((one) =>
    one.organisms
      .filter(({ identity, count }) => identity.isUropathogen && reaches(count, repeatedCfuPerMl) === "yes")
      .map(({ identity }) => ({ id: one.id, key: identity.key })),
  );
  return grown.some((a) => grown.some((b) => a.id !== b.id && a.key === b.key));
}

function hasFew({ organisms: [only, ...others] }: Specimen): boolean {
  if (!only || others.length > 0 || !only.identity.isUropathogen) return false;
  return reaches(only.count, mostUnderTreatmentCfuPerMl + 1) === "no";
}
