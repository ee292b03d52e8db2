import { expect, it } from "vitest";
import { timelineOf } from "../../../src/domain/criteria/index.ts";
import { infantSigns, isInfant } from "../../../src/domain/criteria/suti-2.ts";
import { worldsOf } from "../../../src/domain/criteria/world.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";
import { dayOf } from "../../reference/day-text.ts";

function worldWith(options: Partial<typeof us2024.options>, birthDay: number | null = null) {
  const [world] = worldsOf({ ...timelineOf({}), birthDay }, { ...us2024, options: { ...us2024.options, ...options } });
  if (!world) throw new Error("there is no world");
  return world;
}

it.each([
  ["completed-years", "2023-03-10", "2024-03-10", true],
  ["completed-years", "2023-03-10", "2025-03-09", true],
  ["completed-years", "2023-03-10", "2025-03-10", false],
  ["first-birthday", "2023-03-10", "2024-03-09", true],
  ["first-birthday", "2023-03-10", "2024-03-10", true],
  ["first-birthday", "2023-03-10", "2024-03-11", false],
  ["first-birthday", "2023-12-31", "2024-12-31", true],
  ["first-birthday", "2023-12-31", "2025-01-01", false],
] as const)("by %s, born %s, on %s up to one year of age: %s", (infantAge, birth, day, infant) => {
  expect(isInfant(worldWith({ infantAge }, dayOf(birth)), dayOf(day))).toBe(infant);
});

it("an unknown age is that of the world, whatever the reading", () => {
  const options = { ...us2024.options, infantAge: "first-birthday" } as const;
  const worlds = worldsOf(timelineOf({ ageYears: null }), { ...us2024, options });
  expect(worlds.map((world) => [world.choice.age, isInfant(world, dayOf("2024-03-10"))])).toEqual([
    [80, false],
    [40, false],
    [0, true],
  ]);
});

it("costovertebral pain is a sign of infants only where the edition says so", () => {
  const signs = infantSigns(worldWith({}));
  expect(infantSigns(worldWith({ costovertebralInInfants: true }))).toEqual([...signs, "costovertebral-pain"]);
  // CDC Patient Safety Component Manual, chapter 7, SUTI 2.
  expect([...signs].sort()).toEqual([
    "apnea",
    "bradycardia",
    "fever",
    "hypothermia",
    "lethargy",
    "suprapubic-tenderness",
    "vomiting",
  ]);
});
