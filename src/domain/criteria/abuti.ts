import { dayListWords, dayWords } from "./in-words.ts";
import { cannotTell, failed, unrecordedWords } from "./judge-signs.ts";
import { matchingBlood } from "./matching-blood.ts";
import type { CriterionFacts, CriterionRule, Verdict } from "./rule-kinds.ts";
import { chapter7, chapter7FromMemory, sinceUs2024 } from "./sources.ts";
import { infantSigns, isInfant } from "./suti-2.ts";
import {
  firstElementDay,
  lookUpSigns,
  signEvidence,
  suti1Signs,
  undocumentedEvidence,
  undocumentedWords,
  unknownSigns,
  usableSigns,
} from "./usable-signs.ts";

const name = "ABUTI (bloodstream infection without symptoms)";
const grew = [["Escherichia coli", ">100000"]] as const;
const inBlood = [["Escherichia coli", null]] as const;

export const abuti: CriterionRule = {
  id: "abuti",
  title: "ABUTI: asymptomatic bacteremic urinary tract infection",
  says: "A usable urine culture, none of the signs of SUTI for the age, and in the window a blood specimen with a bacterium that matches one of 100,000 CFU/ml or more in urine; a common commensal in two blood specimens of the same or of consecutive days.",
  sources: [chapter7, chapter7FromMemory],
  inForce: sinceUs2024,
  examples: [
    {
      title: "No sign, the same organism in blood a day later",
      editionId: "us-2024",
      story: { catheters: [[2, null]], urine: [{ day: 10, grew }], blood: [{ day: 11, grew: inBlood }] },
      status: "held",
    },
    {
      title: "The blood lies a day outside of the window",
      editionId: "us-2024",
      story: { catheters: [[2, null]], urine: [{ day: 10, grew }], blood: [{ day: 14, grew: inBlood }] },
      status: "failed",
    },
    {
      title: "A common commensal in one blood specimen only",
      editionId: "us-2024",
      story: {
        catheters: [[2, null]],
        urine: [{ day: 10, grew: [["Staphylococcus epidermidis", ">100000"]] }],
        blood: [{ day: 10, grew: [["Staphylococcus epidermidis", null]] }],
      },
      status: "failed",
      says: "only one blood specimen",
    },
    {
      title: "The blood culture is pending",
      editionId: "us-2024",
      story: { catheters: [[2, null]], urine: [{ day: 10, grew }], blood: [{ day: 11, status: "pending" }] },
      status: "cannot-tell",
      says: "blood",
    },
  ],
  judge,
};

function judge(facts: CriterionFacts): Verdict {
  const { anchor, culture, world } = facts;
  if (culture === null) return failed(anchor.day, `${name} is not met: there is no usable culture.`);
  const list = isInfant(world, anchor.day) ? [...new Set([...suti1Signs, ...infantSigns(world)])] : suti1Signs;
  const [sign] = usableSigns(facts, list);
  if (sign) {
    const verdict = failed(sign.day, `${name} is not met: there was a sign, ${sign.text}.`);
    return { ...verdict, evidence: signEvidence([sign]) };
  }
  const blood = matchingBlood(facts, culture);
  const [first] = blood.matching;
  if (!first) {
    if (blood.waiting.length === 0) return failed(anchor.day, `${name} is not met: ${blood.why}.`, blood.nearest);
    const sentence = `${name} cannot be told yet: the result of a blood specimen in the window is not known.`;
    return cannotTell(
      anchor.day,
      sentence,
      `Look up the blood of ${dayListWords(blood.waiting.map(({ collected }) => collected.day))}.`,
    );
  }
  const unknown = unknownSigns(facts, list);
  if (unknown.length > 0) {
    return cannotTell(anchor.day, unrecordedWords(facts, name, unknown), lookUpSigns(facts, unknown));
  }
  const day = firstElementDay(
    facts,
    blood.matching.map(({ collected }) => collected.day),
  );
  const signs = facts.signs.lookedFor.undocumented.size > 0 ? "no sign is documented" : "no sign was there";
  return {
    status: "held",
    day,
    sentence: `${name} is met: ${signs}, and blood of ${dayWords(first.collected.day)} grew the same organism as the urine.${undocumentedWords(facts, list)}`,
    evidence: [
      ...blood.matching.map(({ id }) => ({ kind: "specimen" as const, id })),
      ...undocumentedEvidence(facts, list),
    ],
    firstElementDay: day,
  };
}
