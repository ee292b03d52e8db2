import type { Story } from "../../../../src/domain/criteria/story.ts";
import { coli, since2 } from "./grown.ts";

const urine = [{ day: 10, grew: coli }] as const;
const ageless = { ageYears: null, urine } as const;

/** What depends on something that nobody recorded, and what does not. */
export const unknown: Readonly<Record<string, Story>> = {
  "age, with fever and no catheter": { ...ageless, signs: [{ day: 10, sign: "38.4" }] },
  "age, with fever and a catheter": { ...ageless, catheters: since2, signs: [{ day: 10, sign: "38.4" }] },
  "age, with apnea": { ...ageless, signs: [{ day: 10, sign: "apnea" }] },
  "age, with no sign at all": ageless,
  "age and removal, each matters": {
    ...ageless,
    catheters: [[2, 8]],
    latestRemoval: 10,
    signs: [{ day: 10, sign: "38.4" }],
  },
  "a temperature that cannot be read": { urine, catheters: since2, signs: [{ day: 9, sign: "temperature" }] },
  "a temperature that cannot be read, and one that can": {
    urine,
    catheters: since2,
    signs: [
      { day: 9, sign: "temperature" },
      { day: 9, sign: "38.4" },
    ],
  },
  "a ward, a removal and an hour": {
    urine,
    wards: [
      [7, 1, 8, null],
      [1, 8, null],
    ],
    catheters: [[2, 8]],
    latestRemoval: 11,
    signs: [{ day: 9, sign: "dysuria" }],
  },
};
