import { dayWords, rangeWords } from "./in-words.ts";
import type { CriterionFacts, CriterionSign, Verdict } from "./rule-kinds.ts";
import type { DatedSign } from "./signs-in-window.ts";
import {
  firstElementDay,
  inPartWords,
  lookUpSigns,
  nearestSign,
  signEvidence,
  signsWords,
  undocumentedEvidence,
  undocumentedWords,
  unknownSigns,
} from "./usable-signs.ts";

/** The range of days in which signs were looked at, as words. */
export function windowWords({ window }: CriterionFacts): string {
  return rangeWords({ first: window.usableFrom, last: window.last });
}

/** A criterion that holds by these signs. */
export function heldBySigns(facts: CriterionFacts, name: string, signs: readonly DatedSign[], rest = ""): Verdict {
  const day = firstElementDay(
    facts,
    signs.map((one) => one.day),
  );
  const [first] = signs;
  return {
    status: "held",
    day,
    sentence: `${name} is met: ${first?.text ?? "no sign"}${rest}.`,
    evidence: signEvidence(signs),
    firstElementDay: day,
  };
}

/** A criterion without a usable sign: not met when all its signs are known, else not to be told. */
export function withoutSigns(facts: CriterionFacts, name: string, list: readonly CriterionSign[]): Verdict {
  const unknown = unknownSigns(facts, list);
  const { day } = facts.anchor;
  if (unknown.length > 0) {
    const sentence =
      facts.signs.openUntil === null
        ? unrecordedWords(facts, name, unknown)
        : `${name} cannot be told yet: the window is open until ${dayWords(facts.signs.openUntil)}.`;
    return cannotTell(day, sentence, lookUpSigns(facts, unknown));
  }
  const sentence = `${name} is not met: no ${signsWords(list)} that counts from ${windowWords(facts)}.`;
  const verdict = failed(day, `${sentence}${undocumentedWords(facts, list)}`, nearestSign(facts, list));
  return { ...verdict, evidence: undocumentedEvidence(facts, list) };
}

/** Why a criterion is open: signs of which the record says nothing, and the days that chart reviews leave open. */
export function unrecordedWords(facts: CriterionFacts, name: string, unknown: readonly CriterionSign[]): string {
  const what = `it is not recorded whether there was ${signsWords(unknown)} from ${windowWords(facts)}`;
  return `${name} cannot be told yet: ${what}.${inPartWords(facts, unknown)}`;
}

/** A verdict of a criterion that does not hold. */
export function failed(day: number, sentence: string, nearest: string | null = null): Verdict {
  return { status: "failed", day, sentence, evidence: [], nearest, firstElementDay: null };
}

/** A verdict of a criterion that cannot be told. */
export function cannotTell(day: number, sentence: string, lookUp: string): Verdict {
  return { status: "cannot-tell", day, sentence, evidence: [], lookUp, firstElementDay: null };
}
