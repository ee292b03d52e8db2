import { cannotTell, failed, heldBySigns, windowWords } from "./judge-signs.ts";
import type { CriterionFacts, CriterionRule, Verdict } from "./rule-kinds.ts";
import { ecdcD1, sinceEcdc2017 } from "./sources.ts";
import { supportOf } from "./support-of-uti-b.ts";
import {
  inPartWords,
  lookUpSigns,
  nearestSign,
  signsWords,
  undocumentedEvidence,
  undocumentedWords,
  unknownSigns,
} from "./usable-signs.ts";
import { europeanSigns } from "./uti-a.ts";

const name = "UTI-B (symptomatic, not confirmed by culture)";
const fewestSigns = 2;

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
  const support = supportOf(facts);
  if (support === null)
    return failed(anchor.day, `${name} is not met: nothing supports it from ${windowWords(facts)}.`);
  const signs = facts.signs.present.filter(({ sign }) => europeanSigns.includes(sign));
  const kinds = new Set(signs.map(({ sign }) => sign));
  if (kinds.size >= fewestSigns) {
    if (support.lookUp === null)
      return heldBySigns(facts, name, signs, `, ${kinds.size} signs in all, and ${support.words}`);
    return cannotTell(anchor.day, `${name} cannot be told yet: ${support.words}.`, support.lookUp);
  }
  const unknown = unknownSigns(facts, europeanSigns).filter((sign) => !kinds.has(sign));
  if (kinds.size + unknown.length >= fewestSigns && unknown.length > 0) {
    const sentence = `${name} cannot be told yet: ${kinds.size} of at least ${fewestSigns} signs are recorded, and it is not recorded whether there was ${signsWords(unknown)}.${inPartWords(facts, unknown)}`;
    return cannotTell(anchor.day, sentence, lookUpSigns(facts, unknown));
  }
  const sentence = `${name} is not met: ${kinds.size} of at least ${fewestSigns} signs were there.${undocumentedWords(facts, europeanSigns)}`;
  const verdict = failed(anchor.day, sentence, nearestSign(facts, europeanSigns));
  return { ...verdict, evidence: undocumentedEvidence(facts, europeanSigns) };
}
