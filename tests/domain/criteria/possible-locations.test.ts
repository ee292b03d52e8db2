import { expect, it } from "vitest";
import { possibleLocations } from "../../../src/domain/criteria/possible-locations.ts";
import { storyDay, timelineOf } from "../../../src/domain/criteria/story.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const timeline = timelineOf({
  wards: [
    [1, 1, 9],
    [2, 9, null],
  ],
});
const at = (day: number) => ({ day: storyDay(day) });

// CDC Patient Safety Component Manual, chapters 2 and 7: three days before the culture, and the rule of transfers.
it("an event of a culture could belong to the unit of each date of event that its window allows", () => {
  const { locations, isPlaceUnknown } = possibleLocations(timeline, at(11), us2024);
  expect(locations).toEqual([1, 1, 1, 2].map((wardId, n) => ({ wardId, day: storyDay(8 + n) })));
  expect(isPlaceUnknown).toBe(false);
  // ECDC dates by the first sign, which may follow the culture, and takes the unit of that day.
  const european = possibleLocations(timeline, at(11), ecdc2017).locations;
  expect(european.map(({ day }) => day - storyDay(0))).toEqual([8, 9, 10, 11, 12, 13, 14]);
});

it("its place is unknown while a stay lasts of which a possible day has none, and not before or after all stays", () => {
  const away = timelineOf({
    wards: [
      [1, 1, 6],
      [1, 12, null],
    ],
  });
  expect(possibleLocations(away, at(10), us2024)).toMatchObject({ isPlaceUnknown: true });
  const left = timelineOf({ wards: [[1, 1, 3]] });
  expect(possibleLocations(left, at(10), us2024)).toEqual({ locations: [], isPlaceUnknown: false });
});

it("its place is unknown while no unit is known of a stay, or none before the first", () => {
  const placeless = timelineOf({ wards: [], admitted: 5 });
  expect(possibleLocations(placeless, at(10), us2024)).toEqual({ locations: [], isPlaceUnknown: true });
  expect(possibleLocations(placeless, at(1), us2024)).toEqual({ locations: [], isPlaceUnknown: false });
  const late = timelineOf({ wards: [[1, 11, null]], admitted: 5 });
  expect(possibleLocations(late, at(9), us2024)).toEqual({ locations: [], isPlaceUnknown: true });
});

// CDC Patient Safety Component Manual, chapter 7: the unit of the day before is asked first.
it("its place is unknown while the unit that decides is, although that of the next day is known", () => {
  const gap = timelineOf({ wards: [[1, 10, null]], admitted: 9 });
  // The window of day 13 begins on day 10, whose event belongs to the unnamed unit of day 9.
  expect(possibleLocations(gap, at(13), us2024).isPlaceUnknown).toBe(true);
  expect(possibleLocations(gap, at(14), us2024).isPlaceUnknown).toBe(false);
  // ECDC asks the unit of the day itself.
  expect(possibleLocations(gap, at(13), ecdc2017).isPlaceUnknown).toBe(false);
  expect(possibleLocations(timelineOf({ wards: [[1, 10, null]] }), at(13), us2024).isPlaceUnknown).toBe(false);
});
