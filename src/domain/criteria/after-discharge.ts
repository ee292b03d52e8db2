import type { Rule } from "./rule.ts";
import { chapter7FromMemory, sinceUs2024 } from "./sources.ts";

const grew = [["Escherichia coli", ">100000"]] as const;
const wards = [[1, 1, 10]] as const;
const catheters = [[5, 10]] as const;

export const afterDischarge: Rule = {
  id: "after-discharge",
  title: "After discharge",
  says: "A date of event on the day of discharge or the day after belongs to the ward that discharged; later ones are not reported. Nobody has a duty to look for them.",
  sources: [chapter7FromMemory, { ...chapter7FromMemory, basis: "read", readIn: "its opening pages, 2013 and 2021" }],
  inForce: sinceUs2024,
  examples: [
    {
      title: "The day after discharge",
      editionId: "us-2024",
      story: { wards, catheters, urine: [{ day: 11, grew }], signs: [{ day: 11, sign: "38.4" }] },
      status: "held",
    },
    {
      title: "Two days after discharge",
      editionId: "us-2024",
      story: { wards, catheters, urine: [{ day: 12, grew }], signs: [{ day: 12, sign: "38.4" }] },
      status: "noted",
    },
  ],
};
