import type { Story, StorySpecimen } from "../../../../src/domain/criteria/story.ts";
import { coli, since2, skin } from "./grown.ts";

const other = [["Klebsiella pneumoniae", ">100000"]] as const;
const dysuriaOn = (...days: number[]) => days.map((day) => ({ day, sign: "dysuria" }) as const);
const after = (later: StorySpecimen, ...signDays: number[]): Story => ({
  urine: [{ day: 5, grew: coli }, later],
  signs: dysuriaOn(5, ...signDays),
});
const blood = (...specimens: StorySpecimen[]): Story => ({
  urine: [{ day: 10, grew: coli }],
  signs: dysuriaOn(8),
  blood: specimens,
});
const quiet = (urine: StorySpecimen["grew"], ...specimens: StorySpecimen[]): Story => ({
  urine: [{ day: 10, grew: urine ?? [] }],
  blood: specimens,
  catheters: since2,
});

/** Repeats of an infection, and the blood that belongs to one. */
export const repeats: Readonly<Record<string, Story>> = {
  "a repeat on the last day of the timeframe": after({ day: 18, grew: other }, 18),
  "a new event on the day after the timeframe": after({ day: 19, grew: other }, 19),
  "a culture from behind the timeframe, an element inside": after({ day: 20, grew: other }, 18),
  "the same organism again adds nothing": after({ day: 7, grew: coli }, 7),
  "a repeat without a sign of its own": after({ day: 12, grew: other }),
  "three cultures, the third after the timeframe of the first": {
    urine: [
      { day: 5, grew: coli },
      { day: 15, grew: other },
      { day: 20, grew: other },
    ],
    signs: dysuriaOn(5, 15, 20),
  },
  "a second stay has its own timeframe": {
    ...after({ day: 15, grew: coli }, 15),
    wards: [
      [1, 1, 8],
      [1, 12, null],
    ],
    newStayAt: [1],
  },
  "depends on an earlier culture that is pending": {
    urine: [
      { day: 5, status: "pending" },
      { day: 10, grew: coli },
    ],
    signs: dysuriaOn(10),
  },
  "depends on an earlier culture of which the count is missing": {
    urine: [
      { day: 5, grew: [["E. coli", null]] },
      { day: 10, grew: coli },
    ],
    signs: dysuriaOn(5, 10),
  },
  "depends on a pending culture of which it may still be a repeat, and no older one": {
    urine: [
      { day: 1, status: "pending" },
      { day: 2, status: "pending" },
      { day: 15, grew: coli },
      { day: 18, status: "pending" },
      { day: 19, status: "pending" },
    ],
    signs: dysuriaOn(15),
  },
  "depends on nothing: the pending culture is too old": {
    urine: [
      { day: 1, status: "pending" },
      { day: 15, grew: coli },
    ],
    signs: dysuriaOn(15),
  },
  "matching blood on the first and the last day of its period": blood(
    { day: 21, grew: [["E. coli", null]] },
    { day: 7, grew: [["Escherichia", null]] },
  ),
  "matching blood a day before and a day after its period": blood(
    { day: 22, grew: [["E. coli", null]] },
    { day: 6, grew: [["E. coli", null]] },
  ),
  "blood that does not match, is withdrawn or was taken for screening": blood(
    { day: 9, grew: other },
    { day: 10, grew: coli, status: "withdrawn" },
    { day: 11, grew: coli, method: "screening" },
  ),
  "blood by a test that is no culture": blood({ day: 9, grew: coli, method: "non-culture-test" }),
  "blood is waited for": blood({ day: 12, grew: coli, status: "preliminary" }, { day: 11, status: "pending" }),
  "one blood matches, another is waited for": blood({ day: 12, grew: coli }, { day: 11, status: "pending" }),
  "a yeast in urine and blood": {
    urine: [{ day: 10, grew: [...coli, ["Candida albicans", ">100000"]] }],
    signs: dysuriaOn(10),
    blood: [{ day: 10, grew: [["Candida albicans", null]] }],
  },
  "no sign, the organism in blood before the urine": quiet(coli, { day: 8, grew: coli }),
  "no sign, two blood specimens": quiet(coli, { day: 13, grew: coli }, { day: 11, grew: coli }),
  "no sign, two blood specimens of one day": quiet(coli, { day: 11, grew: coli }, { day: 11, grew: coli }),
  "no sign, blood outside of the window with another organism": quiet(coli, { day: 6, grew: [...other, ...coli] }),
  "no sign, blood outside of the window": quiet(coli, { day: 6, grew: coli }, { day: 14, grew: other }),
  "no sign, blood waited for": quiet(coli, { day: 12, status: "pending" }, { day: 9, status: "preliminary" }),
  "no sign, a name in blood that nobody knows": quiet(coli, { day: 12, grew: [["Novelia", null]] }),
  "no sign looked for, matching blood": { ...quiet(coli, { day: 12, grew: coli }), lookedFor: false },
  "a sign and matching blood": { ...quiet(coli, { day: 12, grew: coli }), signs: [{ day: 10, sign: "38.4" }] },
  "fever alone at the age of 66 without a catheter, and matching blood": {
    ageYears: 66.1,
    urine: [{ day: 10, grew: coli }],
    signs: [{ day: 10, sign: "38.4" }],
    blood: [{ day: 10, grew: coli }],
  },
  "an old patient without a catheter, matching blood, all signs looked for but fever": {
    ageYears: 80,
    urine: [{ day: 10, grew: coli }],
    blood: [{ day: 10, grew: coli }],
    lookedFor: false,
    signs: (["suprapubic-tenderness", "costovertebral-pain", "urgency", "frequency", "dysuria"] as const).map(
      (sign) => ({
        day: 10,
        sign,
        finding: "absent",
      }),
    ),
  },
  "two pathogens stand in the order of their names": {
    urine: [{ day: 10, grew: [...other, ...coli] }],
    signs: dysuriaOn(10),
  },
  "a commensal in one blood specimen": quiet(skin, { day: 10, grew: skin }),
  "a commensal in two blood specimens of consecutive days": quiet(
    skin,
    { day: 11, grew: skin },
    { day: 10, grew: [["Coagulase-negative staphylococci", null]] },
  ),
  "a commensal in two blood specimens, beside another organism": quiet(
    skin,
    { day: 10, grew: skin },
    { day: 10, grew: [...skin, ...other] },
  ),
  "a commensal in two blood specimens two days apart": quiet(skin, { day: 12, grew: skin }, { day: 10, grew: skin }),
  "a commensal in blood beside one that does not settle": quiet(
    skin,
    { day: 10, grew: skin },
    { day: 10, grew: skin, status: "preliminary" },
  ),
};
