import { failed, heldBySigns, withoutSigns } from "./judge-signs.ts";
import type { CriterionFacts, CriterionRule, CriterionSign, Verdict } from "./rule-kinds.ts";
import { ecdcD1, sinceEcdc2017 } from "./sources.ts";

const name = "UTI-A (symptomatic, confirmed by culture)";
const grew = [["Escherichia coli", ">100000"]] as const;

/** Signs of the European definitions. */
export const europeanSigns: readonly CriterionSign[] = [
  "fever",
  "urgency",
  "frequency",
  "dysuria",
  "suprapubic-tenderness",
];

export const utiA: CriterionRule = {
  id: "uti-a",
  title: "UTI-A",
  says: "At least one of fever above 38 °C, urgency, frequency, dysuria and suprapubic tenderness without another recognized cause, and a culture of 100,000 per ml or more with at most two species.",
  sources: [ecdcD1],
  inForce: sinceEcdc2017,
  examples: [
    {
      title: "Suprapubic tenderness and two species",
      editionId: "ecdc-2017",
      story: {
        urine: [
          {
            day: 10,
            grew: [
              ["E. coli", "10^5"],
              ["E. faecalis", "10^5"],
            ],
          },
        ],
        signs: [{ day: 10, sign: "suprapubic-tenderness" }],
      },
      status: "held",
    },
    {
      title: "No sign",
      editionId: "ecdc-2017",
      story: { urine: [{ day: 10, grew }] },
      status: "failed",
    },
    {
      title: "Nobody looked for any sign",
      editionId: "ecdc-2017",
      story: { urine: [{ day: 10, grew }], lookedFor: false },
      status: "cannot-tell",
    },
  ],
  judge,
};

function judge(facts: CriterionFacts): Verdict {
  if (facts.culture === null) return failed(facts.anchor.day, `${name} is not met: there is no usable culture.`);
  const signs = facts.signs.present.filter(({ sign }) => europeanSigns.includes(sign));
  return signs.length > 0 ? heldBySigns(facts, name, signs) : withoutSigns(facts, name, europeanSigns);
}
