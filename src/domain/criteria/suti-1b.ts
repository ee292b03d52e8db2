import { daysFromTo } from "../days/day-number.ts";
import { dayWords } from "./in-words.ts";
import { failed, heldBySigns, withoutSigns } from "./judge-signs.ts";
import type { CriterionFacts, CriterionRule, CriterionSign, Verdict } from "./rule-kinds.ts";
import type { DatedSign } from "./signs-in-window.ts";
import { chapter7, sinceUs2024 } from "./sources.ts";
import { dateOf, isAssociated, suti1Signs, usableSigns } from "./usable-signs.ts";

const name = "SUTI 1b (without a catheter, any age)";
const grew = [["Escherichia coli", ">100000"]] as const;

export const suti1b: CriterionRule = {
  id: "suti-1b",
  title: "SUTI 1b: symptomatic infection that is not catheter-associated",
  says: "A usable urine culture, no catheter in place for more than 2 days on the date of event, and one of the signs of SUTI 1a; a temperature above 38.0 °C only up to the age of 65.",
  sources: [chapter7],
  inForce: sinceUs2024,
  examples: [
    {
      title: "Fever at the age of 65 without a catheter",
      editionId: "us-2024",
      story: { ageYears: 65, urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "38.6" }] },
      status: "held",
    },
    {
      title: "Fever alone at the age of 66 without a catheter",
      editionId: "us-2024",
      story: { ageYears: 66, urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "38.6" }] },
      status: "failed",
      says: "no suprapubic tenderness",
    },
    {
      title: "Dysuria two days after the removal",
      editionId: "us-2024",
      story: { catheters: [[2, 8]], urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "dysuria" }] },
      status: "held",
    },
    {
      title: "Nobody looked for any sign",
      editionId: "us-2024",
      story: { urine: [{ day: 10, grew }], lookedFor: false },
      status: "cannot-tell",
    },
  ],
  judge,
};

function judge(facts: CriterionFacts): Verdict {
  const { anchor, culture, window, world } = facts;
  if (culture === null) return failed(anchor.day, `${name} is not met: there is no usable culture.`);
  const isOld = (day: number) => world.ageOn(day) > 65;
  const signs = datingSigns(facts, isOld);
  const date = dateOf(
    facts,
    signs.map(({ day }) => day),
  );
  if (signs.length === 0) {
    const days = daysFromTo(window.usableFrom, anchor.day);
    if (days.every((day) => isAssociated(facts, dateOf(facts, [day])))) return withCatheter(date);
    const list: CriterionSign[] = suti1Signs.filter((sign) => sign !== "fever" || !isOld(anchor.day));
    return withoutSigns(facts, name, list);
  }
  if (isAssociated(facts, date)) return withCatheter(date);
  return heldBySigns(facts, name, signs, ", without a catheter in place for more than 2 days");
}

/**
 * The signs that date an infection without a catheter. Fever of the old is none, unless the edition lets an early one
 * date the event once another sign is there.
 */
function datingSigns(facts: CriterionFacts, isOld: (day: number) => boolean): readonly DatedSign[] {
  const usable = usableSigns(facts, suti1Signs);
  if (facts.world.edition.options.earlyFeverOver65 === "dates-the-event" && usable.length > 0)
    return facts.signs.present.filter(({ sign }) => suti1Signs.includes(sign));
  return usable.filter(({ sign, day }) => sign !== "fever" || !isOld(day));
}

function withCatheter(day: number): Verdict {
  return failed(day, `${name} is not met: on ${dayWords(day)} a catheter had been in place for more than 2 days.`);
}
