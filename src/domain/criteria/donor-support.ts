import type { Rule } from "./rule.ts";
import { chapter2, sinceUs2024 } from "./sources.ts";

const grew = [["Escherichia coli", ">100000"]] as const;
const signs = [{ day: 10, sign: "38.8" }] as const;

export const donorSupport: Rule = {
  id: "donor-support",
  title: "Support for organ donation",
  says: "An event whose specimen was collected on or after documented consent, while the patient was supported for organ donation, is not reported. Patient-days and catheter-days are counted.",
  sources: [chapter2],
  inForce: sinceUs2024,
  examples: [
    {
      title: "Collected the day after consent",
      editionId: "us-2024",
      story: { catheters: [[2, null]], urine: [{ day: 10, grew }], signs, donorSupportFrom: 9 },
      status: "held",
    },
    {
      title: "Collected the day before consent",
      editionId: "us-2024",
      story: { catheters: [[2, null]], urine: [{ day: 10, grew }], signs, donorSupportFrom: 11 },
      status: "noted",
    },
  ],
};
