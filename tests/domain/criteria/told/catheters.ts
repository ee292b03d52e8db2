import type { Story, StorySign } from "../../../../src/domain/criteria/story.ts";
import { coli } from "./grown.ts";

const urine = [{ day: 10, grew: coli }] as const;
const fever = [{ day: 10, sign: "38.4" }] as const;
const worn = (catheters: Story["catheters"], signs: readonly StorySign[] = fever): Story => ({
  urine,
  signs,
  ...(catheters === undefined ? {} : { catheters }),
});

/** Whether a catheter had been in place for long enough, and whether somebody could feel urgency. */
export const catheters: Readonly<Record<string, Story>> = {
  "catheter day 3": worn([[8, null]]),
  "catheter day 2, later long enough": worn([[9, null]]),
  "removed the day before": worn([[5, 9]]),
  "removed two days before": worn([[5, 8]]),
  "eligible days on both sides, none on the day": worn([
    [2, 7],
    [12, null],
  ]),
  "exchanged without a day between": worn([
    [2, 6],
    [7, null],
  ]),
  "a full day without one": worn([
    [2, 6],
    [8, 9],
  ]),
  "a suprapubic catheter": worn([[2, null, "suprapubic"]]),
  "in place on arrival": worn([[null, null]]),
  "in place before an inpatient ward": { ...worn([[2, null]]), wards: [[1, 9, null]] },
  "dysuria with the catheter in place": worn([[2, null]], [{ day: 10, sign: "dysuria" }]),
  "dysuria after the removal of the day": worn([[2, 10]], [{ day: 10, sign: "dysuria", hour: 12 }]),
  "dysuria before the removal of the day": worn([[2, 10]], [{ day: 10, sign: "dysuria", hour: 11 }]),
  "dysuria before the insertion of the day": worn([[10, null]], [{ day: 10, sign: "dysuria", hour: 8 }]),
  "dysuria at the insertion of the day": worn([[10, null]], [{ day: 10, sign: "dysuria", hour: 9 }]),
  "dysuria of the day of removal, hour unknown": worn([[2, 10]], [{ day: 10, sign: "dysuria" }]),
  "dysuria of the day between two catheters, hour unknown": worn(
    [
      [2, 10],
      [10, null],
    ],
    [{ day: 10, sign: "dysuria" }],
  ),
  "removal found out later": { ...worn([[2, 8]]), latestRemoval: 10 },
  "removal of the second found out later": {
    ...worn([
      [1, 2],
      [4, 8],
    ]),
    latestRemoval: 10,
  },
  "removal found out later, which does not matter": { ...worn([[2, 8]]), latestRemoval: 9, signs: [] },
  "removal found out later, and dysuria meanwhile": {
    ...worn([[2, 8]], [{ day: 9, sign: "dysuria" }]),
    latestRemoval: 10,
  },
  "removed before it was put in": worn([[9, 5]]),
  "removed before it was put in, beside another that decides": worn([
    [9, 5],
    [2, null],
  ]),
};
