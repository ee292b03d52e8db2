import { expect, it } from "vitest";
import { timelineOf } from "../../../src/domain/criteria/index.ts";
import { couldFeelUrgency, isTooLate, signsInWindow } from "../../../src/domain/criteria/signs-in-window.ts";
import { type Story, type StorySign, storyDay } from "../../../src/domain/criteria/story.ts";
import { type World, worldsOf } from "../../../src/domain/criteria/world.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const window = { first: storyDay(7), usableFrom: storyDay(8), last: storyDay(13) };
const withOptions = (options: Partial<typeof us2024.options>) => ({
  ...us2024,
  options: { ...us2024.options, ...options },
});

function worldOf(story: Story, edition = us2024, nth = 0): World {
  const world = worldsOf(timelineOf({ lookedFor: false, ...story }), edition)[nth];
  if (!world) throw new Error("there is no such world");
  return world;
}

function told(story: Story, edition = us2024, nth = 0) {
  const world = worldOf(story, edition, nth);
  const [episode] = world.episodes;
  if (!episode) throw new Error("there is no stay");
  const { present, setAside, lookedFor, openUntil } = signsInWindow(world, episode, window);
  return {
    present: present.map(({ sign, day, id }) => [sign, day - storyDay(0), id]),
    setAside,
    lookedFor: [...lookedFor.known],
    openUntil: openUntil === null ? null : openUntil - storyDay(0),
  };
}

const signs = (...list: StorySign[]): Story => ({ signs: list });
const nothing = { present: [], setAside: [], lookedFor: [], openUntil: null };

it("takes signs from the first usable to the last day, in the order of days and of their numbers", () => {
  const of = (day: number) => ({ day, sign: "suprapubic-tenderness" }) as const;
  const found = told(signs(of(14), of(13), of(8), of(7), of(8)));
  expect(found.present).toEqual([
    ["suprapubic-tenderness", 8, 3],
    ["suprapubic-tenderness", 8, 5],
    ["suprapubic-tenderness", 13, 2],
  ]);
  const world = worldOf(signs(of(9), of(9)));
  const timeline = { ...world.timeline, signs: world.timeline.signs.toReversed() };
  const [episode] = world.episodes;
  expect(episode && signsInWindow({ ...world, timeline }, episode, window).present.map(({ id }) => id)).toEqual([1, 2]);
});

it.each<[string, StorySign, Partial<typeof nothing> | Record<string, unknown>]>([
  ["absent", { day: 9, sign: "vomiting", finding: "absent" }, { lookedFor: ["vomiting"] }],
  ["not recorded", { day: 9, sign: "vomiting", finding: "not-recorded" }, {}],
  ["fever", { day: 9, sign: "38.1" }, { present: [["fever", 9, 1]], lookedFor: ["fever", "hypothermia"] }],
  ["hypothermia", { day: 9, sign: "35.9" }, { present: [["hypothermia", 9, 1]], lookedFor: ["fever", "hypothermia"] }],
  [
    "neither",
    { day: 9, sign: "37.0" },
    {
      setAside: ["a temperature of 37.0 °C on 9 March 2024 is neither above 38.0 °C nor below 36.0 °C"],
      lookedFor: ["fever", "hypothermia"],
    },
  ],
  ["a temperature without a value", { day: 9, sign: "temperature" }, { lookedFor: ["fever", "hypothermia"] }],
  [
    "another cause",
    { day: 9, sign: "apnea", otherCause: true },
    { setAside: ["apnea on 9 March 2024 has another recognized cause"], lookedFor: ["apnea"] },
  ],
])("one sign, %s, is told with nothing beside it", (_title, sign, expected) => {
  expect(told(signs(sign))).toEqual({ ...nothing, ...expected });
});

it("sets fever with another cause aside where the edition takes that away", () => {
  expect(told(signs({ day: 9, sign: "38.4", otherCause: true }), ecdc2017)).toEqual({
    ...nothing,
    setAside: ["a temperature of 38.4 °C on 9 March 2024 has another recognized cause"],
    lookedFor: ["fever", "hypothermia"],
  });
});

it("tries what is in doubt both ways, first as absent", () => {
  const unread = signs({ day: 9, sign: "temperature" });
  expect([0, 1].map((nth) => told(unread, us2024, nth).present)).toEqual([
    [],
    [
      ["fever", 9, 1],
      ["hypothermia", 9, 1],
    ],
  ]);
  const undated: Story = { catheters: [[2, 9]], ...signs({ day: 9, sign: "dysuria" }) };
  expect([0, 1].map((nth) => told(undated, us2024, nth).present)).toEqual([[], [["dysuria", 9, 1]]]);
});

const inPlace = (day: number) => [`dysuria on ${day} March 2024 counts only while no catheter is in place`];

it.each<[number, number | undefined, readonly string[]]>([
  [8, undefined, []],
  [9, 8, inPlace(9)],
  [10, undefined, inPlace(10)],
  [11, 13, inPlace(11)],
  [12, undefined, []],
])("where dysuria never counts on a day with a catheter: day %s at %s", (day, hour, setAside) => {
  const sign: StorySign = { day, sign: "dysuria", ...(hour === undefined ? {} : { hour }) };
  const edition = withOptions({ urgencyOnRemovalDay: "never" });
  const story: Story = {
    catheters: [
      [1, 2],
      [9, 11],
    ],
    ...signs(sign),
  };
  expect(told(story, edition)).toMatchObject({ setAside, present: setAside.length > 0 ? [] : [["dysuria", day, 1]] });
});

it.each([
  [[8, 9, 10, 11, 12, 13], ["apnea"]],
  [[9, 10, 11, 12, 13], []],
  [[8, 9, 10, 11, 12], []],
  [[8, 9, 11, 12, 13], []],
])("where somebody has to look every day, looking on the days %j is looking for %j", (days, lookedFor) => {
  const looked = days.map((day): StorySign => ({ day, sign: "apnea", finding: "absent" }));
  expect(told(signs(...looked), withOptions({ lookedFor: "every-day" })).lookedFor).toEqual(lookedFor);
});

it.each<[Story, number | null]>([
  [{ knownThrough: 12 }, 13],
  [{ knownThrough: 13 }, null],
  [{ knownThrough: 10, died: 11 }, 11],
  [{ knownThrough: 11, died: 11 }, null],
  [{ knownThrough: 10, wards: [[1, 1, 10]] }, 11],
  [{ knownThrough: 11, wards: [[1, 1, 10]] }, null],
])("with %j signs can come until day %s", (story, openUntil) => {
  expect(told(story).openUntil).toBe(openUntil);
});

it("takes nothing from behind the day of the question, or from behind death", () => {
  const late = signs({ day: 12, sign: "apnea" });
  expect([11, 12].map((knownThrough) => told({ ...late, knownThrough }).present.length)).toEqual([0, 1]);
  const world = worldOf({ died: 10, knownThrough: 12 });
  expect([10, 11, 12, 13].map((day) => isTooLate(world, storyDay(day)))).toEqual([false, true, true, true]);
  const used = worldOf({ died: 10, knownThrough: 12 }, withOptions({ afterDeath: "used" }));
  expect([10, 11, 12, 13].map((day) => isTooLate(used, storyDay(day)))).toEqual([false, false, false, true]);
});

it.each<[Story["catheters"] & object, boolean]>([
  [[], true],
  [[[2, null]], false],
  [[[2, 13]], true],
  [[[8, null]], true],
  [[[7, null]], false],
])("with catheters %j somebody could feel urgency in the window: %s", (catheters, could) => {
  expect(couldFeelUrgency(worldOf({ catheters }), window)).toBe(could);
});
