import type { Story, StorySign } from "../../../../src/domain/criteria/story.ts";
import { coli, since2 } from "./grown.ts";

const on = (day: number, signs: readonly StorySign[] = [{ day, sign: "dysuria" }]): Story => ({
  urine: [{ day, grew: coli }],
  signs,
});
const twoWards = [
  [1, 1, 9],
  [2, 9, null],
] as const;
const leave = [
  [1, 1, 9],
  [2, 12, null],
] as const;
const left = [[1, 1, 10]] as const;
const fever = [{ day: 10, sign: "38.4" }] as const;
const back = { newStayAt: [1] } as const;

/** To which admission and ward an infection belongs, and when it was there already. */
export const stays: Readonly<Record<string, Story>> = {
  "hospital day 2": on(2),
  "hospital day 3": on(3),
  "two days before the first inpatient day": { ...on(3), wards: [[1, 5, null]] },
  "three days before the first inpatient day": { ...on(2), wards: [[1, 5, null]] },
  "elements from before the stay": { ...on(6, [{ day: 3, sign: "dysuria" }]), wards: [[1, 5, null]] },
  "an element too far before the stay": { ...on(6, [{ day: 2, sign: "39.0" }]), wards: [[1, 5, null]] },
  "the day of a transfer": { ...on(9), wards: twoWards },
  "the day after a transfer": { ...on(10), wards: twoWards },
  "two days after a transfer": { ...on(11), wards: twoWards },
  "on leave, the day after": { ...on(10), wards: leave },
  "on leave, the second day": { ...on(11), wards: leave },
  "the day of return from leave": { ...on(12), wards: leave },
  "an outpatient ward before the inpatient ward": {
    ...on(5),
    wards: [
      [7, 1, 4, "outpatient"],
      [1, 4, null],
    ],
  },
  "a ward that nobody described": {
    ...on(4),
    wards: [
      [7, 1, 3, null],
      [1, 3, null],
    ],
  },
  "a ward that nobody described, long before": {
    ...on(14),
    wards: [
      [7, 1, 3, null],
      [1, 3, null],
    ],
  },
  "outpatient wards alone": { ...on(5), wards: [[7, 1, null, "outpatient"]] },
  "the day of discharge": { ...on(10), wards: left, catheters: [[2, 10]] },
  "the day after discharge": { ...on(11), wards: left, catheters: [[2, 10]] },
  "two days after discharge": { ...on(12), wards: left, catheters: [[2, 10]] },
  "after discharge, with an element on the last day": { ...on(13, [{ day: 10, sign: "38.5" }]), wards: left },
  "four days after discharge, nobody looked": { ...on(14, []), wards: left, lookedFor: false },
  "five days after discharge": { ...on(15), wards: left },
  "the window of a discharged patient closes early": { ...on(9, []), wards: left, knownThrough: 11 },
  "still on leave when asked": { ...on(10), wards: [[1, 1, 9]], discharged: false },
  "back the next day": {
    ...on(12),
    ...back,
    wards: [
      [1, 1, 10],
      [2, 11, null],
    ],
  },
  "back the next day, both readings alike": {
    ...on(18),
    ...back,
    wards: [
      [1, 1, 10],
      [2, 11, null],
    ],
  },
  "back after a full day outside": {
    ...on(13),
    ...back,
    wards: [
      [1, 1, 10],
      [2, 12, null],
    ],
  },
  "between two stays, dated by the earlier": {
    ...on(12, [{ day: 10, sign: "38.4" }]),
    ...back,
    wards: [
      [1, 1, 10],
      [2, 13, null],
    ],
  },
  "between two stays, too late for the earlier": {
    ...on(13),
    ...back,
    wards: [
      [1, 1, 10],
      [2, 14, null],
    ],
  },
  "between two stays, nobody looked": {
    ...on(12, []),
    ...back,
    lookedFor: false,
    wards: [
      [1, 1, 10],
      [2, 13, null],
    ],
  },
  "supported for organ donation since that day": { ...on(10, fever), catheters: since2, donorSupportFrom: 10 },
  "supported for organ donation since the day between the first sign and the specimen": {
    ...on(10, [{ day: 8, sign: "38.4" }]),
    catheters: since2,
    donorSupportFrom: 9,
  },
  "supported for organ donation from the next day on": { ...on(10, fever), catheters: since2, donorSupportFrom: 11 },
  "an event although the patient died the next day": { ...on(10), died: 11 },
};
