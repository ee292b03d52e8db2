import { expect, it } from "vitest";
import { timelineOf } from "../../../src/domain/criteria/index.ts";
import { criterionSignsOf, lookedForIn } from "../../../src/domain/criteria/looked-for.ts";
import { type StorySign, storyDay } from "../../../src/domain/criteria/story.ts";
import { worldsOf } from "../../../src/domain/criteria/world.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

type Options = typeof us2024.options;
const days = { first: storyDay(7), last: storyDay(13) };
const review = (day: number, through: number, read: number): StorySign => {
  return { day, sign: "apnea", finding: "not-documented", through, read };
};
const absent = (day: number): StorySign => ({ day, sign: "apnea", finding: "absent" });

function told(signs: readonly StorySign[], options: Partial<Options> = {}) {
  const timeline = timelineOf({ signs, lookedFor: false });
  const [world] = worldsOf(timeline, { ...us2024, options: { ...us2024.options, ...options } });
  if (!world) throw new Error("a timeline has a world");
  const { known, undocumented, reviewedInPart } = lookedForIn(timeline.signs, days, world);
  const readOn = undocumented.get("apnea")?.map(({ readDay }) => readDay - storyDay(0));
  return [known.has("apnea"), readOn, reviewedInPart.get("apnea")?.map((day) => day - storyDay(0))];
}

it.each<[string, StorySign[], unknown[]]>([
  ["for all days, read after them", [review(7, 13, 14)], [true, [14], undefined]],
  ["for all days, read on the last", [review(7, 13, 13)], [true, [13], undefined]],
  ["read a day before the last", [review(7, 13, 12)], [false, undefined, [13]]],
  ["without the first day", [review(8, 13, 14)], [false, undefined, [7]]],
  ["that began before and went on after", [review(1, 20, 30)], [true, [30], undefined]],
  ["twice, one after the other", [review(7, 10, 10), review(11, 13, 15)], [true, [10, 15], undefined]],
  ["twice, with a day between", [review(7, 9, 9), review(11, 13, 15)], [false, undefined, [10]]],
  ["read before any of these days", [review(1, 13, 6)], [false, undefined, undefined]],
  ["beside a look at the patient, which is enough", [review(7, 9, 9), absent(9)], [true, undefined, undefined]],
])("a chart review %s", (_title, signs, expected) => {
  expect(told(signs)).toEqual(expected);
});

it("fills the days without a look where each day needs one", () => {
  const everyDay = { lookedFor: "every-day" } as const;
  expect(told([absent(7), review(8, 13, 14)], everyDay)).toEqual([true, [14], undefined]);
  expect(told([absent(7), review(9, 13, 14)], everyDay)).toEqual([false, undefined, [8]]);
});

it("counts for nothing where an undocumented sign is not known", () => {
  expect(told([review(7, 13, 14)], { undocumented: "not-known" })).toEqual([false, undefined, undefined]);
});

it("knows no sign of criteria in chills and hypotension", () => {
  const names = (["chills", "hypotension", "temperature", "dysuria"] as const).map((sign) =>
    criterionSignsOf({ sign }),
  );
  expect(names).toEqual([[], [], ["fever", "hypothermia"], ["dysuria"]]);
});
