import { judgeCulture } from "./judge-culture.ts";
import type { CultureRule } from "./rule-kinds.ts";
import { chapter7, chapter7FromMemory, sinceUs2024, urineQuestions } from "./sources.ts";

export const urineCulture: CultureRule = {
  id: "urine-culture",
  title: "Urine culture",
  says: "At most two species, at least one of them a bacterium of 100,000 CFU/ml or more. Mixed flora makes the specimen unusable, whatever else grew; a laboratory's category on both sides of the limit counts only if the laboratory confirms the limit, so the laboratory is asked. Yeasts, molds and parasites are no pathogens here, but count as species.",
  sources: [chapter7, urineQuestions, chapter7FromMemory],
  inForce: sinceUs2024,
  examples: [
    {
      title: "A bacterium of more than 100,000 CFU/ml beside a yeast",
      editionId: "us-2024",
      story: {
        urine: [
          {
            day: 10,
            grew: [
              ["E. coli", ">=100,000"],
              ["Candida albicans", "100000"],
            ],
          },
        ],
      },
      status: "held",
    },
    {
      title: "Three species",
      editionId: "us-2024",
      story: {
        urine: [
          {
            day: 10,
            grew: [
              ["E. coli", ">100000"],
              ["K. pneumoniae", "50000"],
              ["E. faecalis", "20000"],
            ],
          },
        ],
      },
      status: "failed",
      says: "3 species",
    },
    {
      title: "Yeast alone",
      editionId: "us-2024",
      story: { urine: [{ day: 10, grew: [["Candida albicans", ">100000"]] }] },
      status: "failed",
    },
    {
      title: "Mixed flora beside a bacterium",
      editionId: "us-2024",
      story: {
        urine: [
          {
            day: 10,
            grew: [
              ["E. coli", ">100000"],
              ["Mixed flora", null],
            ],
          },
        ],
      },
      status: "failed",
    },
    {
      title: "A category on both sides of the limit, and fever",
      editionId: "us-2024",
      story: { urine: [{ day: 10, grew: [["E. coli", "75,000-100,000"]] }], signs: [{ day: 10, sign: "38.4" }] },
      status: "cannot-tell",
      says: "75,000 to 100,000",
    },
    {
      title: "A bacterium without a count, and fever",
      editionId: "us-2024",
      story: { urine: [{ day: 10, grew: [["E. coli", null]] }], signs: [{ day: 10, sign: "38.4" }] },
      status: "cannot-tell",
      says: "no count",
    },
    {
      title: "A bacterium without a count, where no sign was there and no blood was taken",
      editionId: "us-2024",
      story: { urine: [{ day: 10, grew: [["E. coli", null]] }] },
      status: "noted",
      says: "the answer is the same",
    },
    {
      title: "An unknown organism of too little",
      editionId: "us-2024",
      story: { urine: [{ day: 10, grew: [["Novelia", "10000"]] }], signs: [{ day: 10, sign: "38.4" }] },
      status: "failed",
      says: "does not matter what “Novelia” is",
    },
  ],
  judge: (specimen, world) => judgeCulture(specimen, world, ["bacterium"]),
};
