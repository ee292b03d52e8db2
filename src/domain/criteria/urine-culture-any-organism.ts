import { judgeCulture } from "./judge-culture.ts";
import type { CultureRule } from "./rule-kinds.ts";
import { ecdcD1, sinceEcdc2017 } from "./sources.ts";

export const urineCultureAnyOrganism: CultureRule = {
  id: "urine-culture-any-organism",
  title: "Urine culture (European)",
  says: "At most two species of microorganisms, at least one of 100,000 per ml or more.",
  sources: [ecdcD1],
  inForce: sinceEcdc2017,
  examples: [
    {
      title: "A yeast counts as a microorganism",
      editionId: "ecdc-2017",
      story: { urine: [{ day: 10, grew: [["Candida albicans", ">100000"]] }] },
      status: "held",
    },
    {
      title: "Too few",
      editionId: "ecdc-2017",
      story: { urine: [{ day: 10, grew: [["E. coli", "50000"]] }] },
      status: "failed",
    },
    {
      title: "The laboratory's report is preliminary",
      editionId: "ecdc-2017",
      story: { urine: [{ day: 10, status: "preliminary", grew: [["E. coli", ">100000"]] }] },
      status: "cannot-tell",
    },
  ],
  judge: (specimen, world) => judgeCulture(specimen, world, ["bacterium", "yeast-or-mold", "other"]),
};
