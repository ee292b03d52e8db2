import { type DayNumber, dayMs } from "../days/day-number.ts";
import { failed, heldBySigns, withoutSigns } from "./judge-signs.ts";
import type { CriterionFacts, CriterionRule, CriterionSign, Verdict } from "./rule-kinds.ts";
import { chapter7, sinceUs2024 } from "./sources.ts";
import { usableSigns } from "./usable-signs.ts";
import type { World } from "./world.ts";

const name = "SUTI 2 (up to 1 year of age)";
const grew = [["Escherichia coli", ">100000"]] as const;

export const suti2: CriterionRule = {
  id: "suti-2",
  title: "SUTI 2: symptomatic infection of infants",
  says: "Up to 1 year of age, with or without a catheter: a usable urine culture and in the window at least one of: temperature above 38.0 °C or below 36.0 °C, or without another recognized cause apnea, bradycardia, lethargy, vomiting or suprapubic tenderness.",
  sources: [chapter7],
  inForce: sinceUs2024,
  examples: [
    {
      title: "Hypothermia of 35.8 °C",
      editionId: "us-2024",
      story: { ageYears: 0, catheters: [[2, null]], urine: [{ day: 5, grew }], signs: [{ day: 5, sign: "35.8" }] },
      status: "held",
    },
    {
      title: "36.0 °C is no hypothermia",
      editionId: "us-2024",
      story: { ageYears: 0, catheters: [[2, null]], urine: [{ day: 5, grew }], signs: [{ day: 5, sign: "36.0" }] },
      status: "failed",
    },
    {
      title: "Vomiting of a child of 2 years",
      editionId: "us-2024",
      story: { ageYears: 2, catheters: [[2, null]], urine: [{ day: 5, grew }], signs: [{ day: 4, sign: "vomiting" }] },
      status: "failed",
      says: "older than 1 year",
    },
    {
      title: "Vomiting of a patient whose birth date nobody recorded",
      editionId: "us-2024",
      story: {
        ageYears: null,
        catheters: [[2, null]],
        urine: [{ day: 5, grew }],
        signs: [{ day: 4, sign: "vomiting" }],
      },
      status: "cannot-tell",
      says: "age",
    },
    {
      title: "Nobody looked for any sign",
      editionId: "us-2024",
      story: { ageYears: 0, urine: [{ day: 5, grew }], lookedFor: false },
      status: "cannot-tell",
    },
  ],
  judge,
};

const ownSigns: readonly CriterionSign[] = [
  "fever",
  "hypothermia",
  "apnea",
  "bradycardia",
  "lethargy",
  "vomiting",
  "suprapubic-tenderness",
];

/** The signs of infants in the reading of the edition. */
export function infantSigns({ edition }: World): readonly CriterionSign[] {
  return edition.options.costovertebralInInfants ? [...ownSigns, "costovertebral-pain"] : ownSigns;
}

/** Whether the patient is up to 1 year of age on a day, in the reading of the edition. */
export function isInfant(world: World, day: DayNumber): boolean {
  const { birthDay } = world.timeline;
  if (world.edition.options.infantAge === "completed-years" || birthDay === null) return world.ageOn(day) <= 1;
  const birth = new Date(birthDay * dayMs);
  return day * dayMs <= Date.UTC(birth.getUTCFullYear() + 1, birth.getUTCMonth(), birth.getUTCDate());
}

function tooOldWords({ timeline }: World): string {
  if (timeline.birthDay !== null) return "the patient is older than 1 year";
  return "it is for patients up to 1 year old. The birth date is not recorded, but the answer is the same at any age";
}

function judge(facts: CriterionFacts): Verdict {
  const { anchor, culture, world } = facts;
  if (culture === null) return failed(anchor.day, `${name} is not met: there is no usable culture.`);
  if (!isInfant(world, anchor.day)) return failed(anchor.day, `${name} does not apply: ${tooOldWords(world)}.`);
  const signs = usableSigns(facts, infantSigns(world));
  return signs.length > 0 ? heldBySigns(facts, name, signs) : withoutSigns(facts, name, infantSigns(world));
}
