import type { Rule } from "./rule.ts";
import { chapter2FromMemory, sinceUs2024 } from "./sources.ts";

export const afterDeath: Rule = {
  id: "after-death",
  title: "After death",
  says: "Specimens and signs from after death are not used; death does not take away an event that met a definition.",
  sources: [chapter2FromMemory],
  inForce: sinceUs2024,
  examples: [
    {
      title: "Collected at autopsy",
      editionId: "us-2024",
      story: { died: 9, urine: [{ day: 10, grew: [["Escherichia coli", ">100000"]] }] },
      status: "held",
    },
  ],
};
