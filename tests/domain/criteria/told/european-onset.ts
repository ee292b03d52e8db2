import type { Story, StorySign } from "../../../../src/domain/criteria/story.ts";
import { coli } from "./grown.ts";

const fever: StorySign = { day: 10, sign: "38.4" };

/** Onset, catheter and ward by the European definitions. */
export const europeanOnset: Readonly<Record<string, Story>> = {
  "onset on day 2, no catheter": { urine: [{ day: 2, grew: coli }], signs: [{ day: 2, sign: "dysuria" }] },
  "onset on day 2, a catheter on day 2": {
    urine: [{ day: 2, grew: coli }],
    catheters: [[2, null]],
    signs: [{ day: 2, sign: "dysuria" }],
  },
  "onset on day 1, a catheter on day 2": {
    urine: [{ day: 2, grew: coli }],
    catheters: [[2, null]],
    signs: [{ day: 1, sign: "dysuria" }],
  },
  "onset on day 2, in place on arrival": {
    urine: [{ day: 2, grew: coli }],
    catheters: [[null, null]],
    signs: [{ day: 2, sign: "dysuria" }],
  },
  "onset before the stay": {
    wards: [[1, 5, null]],
    urine: [{ day: 5, grew: coli }],
    signs: [{ day: 4, sign: "dysuria" }],
  },
  "back after one day, onset on the first day": {
    wards: [
      [1, 1, 8],
      [2, 9, null],
    ],
    newStayAt: [1],
    urine: [{ day: 9, grew: coli }],
    signs: [{ day: 9, sign: "dysuria" }],
  },
  "back after two days, onset on the first day": {
    wards: [
      [1, 1, 8],
      [2, 10, null],
    ],
    newStayAt: [1],
    urine: [{ day: 12, grew: coli }],
    signs: [{ day: 10, sign: "dysuria" }],
  },
  "removed 7 days before onset": { urine: [{ day: 10, grew: coli }], catheters: [[1, 3]], signs: [fever] },
  "removed 8 days before onset": { urine: [{ day: 10, grew: coli }], catheters: [[1, 2]], signs: [fever] },
  "put in after onset": { urine: [{ day: 10, grew: coli }], catheters: [[11, null]], signs: [fever] },
  "the day after a transfer": {
    urine: [{ day: 10, grew: coli }],
    signs: [fever],
    wards: [
      [1, 1, 9],
      [2, 9, null],
    ],
  },
};
