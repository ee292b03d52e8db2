/** Of a month: times that are not known well enough to tell on which side of a census they are. */
export const hourGapWords = {
  "removal-between": {
    blocks: false,
    one: "1 catheter was found removed; it counts to the last time at which it was seen.",
    several: "{count} catheters were found removed; they count to the last time at which they were seen.",
    remedy: "Correct the removal when its time is known.",
  },
  "removal-no-hour": {
    blocks: false,
    one: "1 catheter was removed at an unknown hour, so its census of that day is unknown. It is not counted that day.",
    several:
      "{count} catheters were removed at unknown hours, so their census of those days is unknown. They are not counted those days.",
    remedy: "Enter the hour of the removal in the patient's record.",
  },
  "insertion-no-hour": {
    blocks: false,
    one: "1 catheter was inserted at an unknown hour, so its census of that day is unknown. It is counted that day.",
    several:
      "{count} catheters were inserted at unknown hours, so their census of those days is unknown. They are counted those days.",
    remedy: "Enter the hour of the insertion in the patient's record.",
  },
  "time-no-hour": {
    blocks: false,
    one: "1 time of a stay or move has no hour, so the census of that day is unknown. The beginning of the day is taken.",
    several:
      "{count} times of stays and moves have no hour, so the census of those days is unknown. The beginning of the day is taken.",
    remedy: "Enter the hours in the patients' records.",
  },
} as const;
