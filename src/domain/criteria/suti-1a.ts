import { daysFromTo } from "../days/day-number.ts";
import { dayWords } from "./in-words.ts";
import { failed, heldBySigns, withoutSigns } from "./judge-signs.ts";
import type { CriterionFacts, CriterionRule, Verdict } from "./rule-kinds.ts";
import { chapter7, chapter7FromMemory, sinceUs2024 } from "./sources.ts";
import { dateOf, isAssociated, suti1Signs, usableSigns } from "./usable-signs.ts";

const name = "SUTI 1a (catheter-associated, any age)";
const grew = [["Escherichia coli", ">100000"]] as const;

export const suti1a: CriterionRule = {
  id: "suti-1a",
  title: "SUTI 1a: symptomatic infection with a catheter",
  says: "A usable urine culture, a catheter in place for more than 2 days on the date of event (or removed the day before), and in the window at least one of: temperature above 38.0 °C, suprapubic tenderness or costovertebral angle pain or tenderness without another recognized cause, or urgency, frequency or dysuria while no catheter is in place.",
  sources: [chapter7, chapter7FromMemory],
  inForce: sinceUs2024,
  examples: [
    {
      title: "Fever on the day of the culture, catheter since day 2",
      editionId: "us-2024",
      story: { catheters: [[2, null]], urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "38.4" }] },
      status: "held",
      says: "38.4 °C on 10 March 2024",
    },
    {
      title: "38.0 °C is no fever",
      editionId: "us-2024",
      story: { catheters: [[2, null]], urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "38.0" }] },
      status: "failed",
    },
    {
      title: "Dysuria with the catheter in place does not count",
      editionId: "us-2024",
      story: { catheters: [[2, null]], urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "dysuria" }] },
      status: "failed",
    },
    {
      title: "Fever on catheter day 2: too early",
      editionId: "us-2024",
      story: { catheters: [[9, null]], urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "38.4" }] },
      status: "failed",
      says: "not in place for more than 2 days",
    },
    {
      title: "Nobody looked for any sign",
      editionId: "us-2024",
      story: { catheters: [[2, null]], urine: [{ day: 10, grew }], lookedFor: false },
      status: "cannot-tell",
      says: "not recorded whether",
    },
  ],
  judge,
};

function judge(facts: CriterionFacts): Verdict {
  const { anchor, culture, window } = facts;
  if (culture === null) return failed(anchor.day, `${name} is not met: there is no usable culture.`);
  const signs = datingSigns(facts);
  if (signs.length === 0) {
    const days = daysFromTo(window.usableFrom, anchor.day);
    if (!days.some((day) => isAssociated(facts, dateOf(facts, [day])))) return withoutCatheter(facts, anchor.day);
    return withoutSigns(facts, name, suti1Signs);
  }
  const date = dateOf(
    facts,
    signs.map(({ day }) => day),
  );
  if (!isAssociated(facts, date)) return withoutCatheter(facts, date);
  return heldBySigns(facts, name, signs, ", with a catheter in place for more than 2 days");
}

/** All signs, also early fever of the old, where the edition lets it date the event. */
function datingSigns(facts: CriterionFacts) {
  if (facts.world.edition.options.earlyFeverOver65 === "not-usable") return usableSigns(facts, suti1Signs);
  return facts.signs.present.filter(({ sign }) => suti1Signs.includes(sign));
}

function withoutCatheter(facts: CriterionFacts, day: number): Verdict {
  const sentence = `${name} is not met: on ${dayWords(day)} a catheter was not in place for more than 2 days, nor removed the day before.`;
  const days = facts.world.eligibility(facts.episode);
  const nearest = [...days]
    .filter(([, number]) => number > 2)
    .sort(([a], [b]) => Math.abs(a - day) - Math.abs(b - day));
  const [found] = nearest;
  return failed(day, sentence, found ? `Nearest: ${dayWords(found[0])} was catheter day ${found[1]}.` : null);
}
