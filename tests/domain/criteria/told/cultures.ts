import type { Story } from "../../../../src/domain/criteria/story.ts";
import { coli, since2 } from "./grown.ts";

const grewOn10 = (...grew: [string, string | null][]): Story => ({ urine: [{ day: 10, grew }] });
/** The same with a catheter and fever, so that the culture alone decides. */
const feverish = (...grew: [string, string | null][]): Story => ({
  ...grewOn10(...grew),
  catheters: since2,
  signs: [{ day: 9, sign: "38.4" }],
});
const at10 = (more: Omit<NonNullable<Story["urine"]>[number], "day">): Story => ({ urine: [{ day: 10, ...more }] });

/** What a urine culture is worth. */
export const cultures: Readonly<Record<string, Story>> = {
  "two bacteria, one of them with too little": grewOn10(["E. coli", ">=100,000"], ["K. pneumoniae", "50000"]),
  "two bacteria, both usable": grewOn10(["E. coli", "10^5"], ["K. pneumoniae", "200000"]),
  "one species told twice beside another": grewOn10(["E. coli", "10^5"], ["Escherichia coli", "5000"], ["yeast", null]),
  "two bacteria and a yeast": grewOn10(["E. coli", "10^5"], ["K. pneumoniae", "200000"], ["Candida albicans", "1000"]),
  "two names that nobody knows, beside a bacterium": grewOn10(["E. coli", "10^5"], ["Novelia", "1"], ["Rarea", "1"]),
  "two names that nobody knows": grewOn10(["Novelia", "1"], ["Rarea", "1"]),
  "three species and a name that nobody knows": grewOn10(
    ["E. coli", "10^5"],
    ["K. pneumoniae", "200000"],
    ["E. faecalis", "1000"],
    ["Novelia", "1000"],
  ),
  "mixed flora beside a bacterium": grewOn10(["E. coli", "10^5"], ["Mixed skin flora", null]),
  "two yeasts": grewOn10(["Candida albicans", ">100000"], ["Candida auris", ">100000"]),
  "a parasite": grewOn10(["Trichomonas vaginalis", "100000"]),
  "one count too low, the other missing": grewOn10(["E. coli", "99,999"], ["K. pneumoniae", null]),
  "one count too low, the other on both sides of the limit": grewOn10(
    ["E. coli", "99,999"],
    ["K. pneumoniae", "50,000-100,000"],
  ),
  "fever, and a count on both sides of the limit": feverish(["E. coli", "50,000-100,000"]),
  "fever, and a count that is missing beside one that suffices": feverish(
    ["E. coli", ">100000"],
    ["K. pneumoniae", null],
  ),
  "fever, and a name that nobody knows with too little": feverish(["Novelia", "10000"]),
  "fever, and a name that nobody knows with enough": feverish(["Novelia", ">100000"]),
  "fever, and a name that nobody knows beside two bacteria": feverish(
    ["E. coli", "10^5"],
    ["K. pneumoniae", "1000"],
    ["Novelia", "1"],
  ),
  "fever, two names and a count that nobody knows": feverish(["Novelia", null], ["Rarea", "1000"]),
  "a count that is missing, where blood would match": {
    ...grewOn10(["E. coli", null]),
    blood: [{ day: 10, grew: [["E. coli", null]] }],
  },
  "a count too low": grewOn10(["E. coli", "<100000"]),
  "an amount in words": grewOn10(["E. coli", "heavy growth"]),
  "the last word of the laboratory after a first one": at10({ grew: coli, status: "corrected" }),
  "a preliminary report": at10({ grew: coli, status: "preliminary" }),
  "nothing reported yet": at10({ status: "pending" }),
  "a withdrawn report": at10({ grew: coli, status: "withdrawn" }),
  "the tip of a catheter": at10({ grew: coli, method: "catheter-tip" }),
  "a screening culture": at10({ grew: coli, method: "screening" }),
  "a test that is no culture": at10({ grew: coli, method: "non-culture-test" }),
  "no growth": at10({}),
  "a pending screening": at10({ status: "pending", method: "screening" }),
  "collected on the last day of which anything is known": { ...at10({ grew: coli }), knownThrough: 10 },
  "collected on a day that is not yet": { ...at10({ grew: coli }), knownThrough: 9 },
  "collected on the day of death": { ...at10({ grew: coli }), died: 10 },
  "collected after death": { ...at10({ grew: coli }), died: 9 },
  "collected after death, on the last day of which anything is known": {
    ...at10({ grew: coli }),
    died: 9,
    knownThrough: 10,
  },
  "withdrawn, and the patient died on that day": { ...at10({ grew: coli, status: "withdrawn" }), died: 10 },
  "a finding in urine starts nothing": { findings: [[10, "pyuria"]], signs: [{ day: 10, sign: "38.4" }] },
  "withdrawn, and collected after death": { ...at10({ grew: coli, status: "withdrawn" }), died: 9 },
  "collected after death, on a day that is not yet": { ...at10({ grew: coli }), died: 8, knownThrough: 9 },
};
