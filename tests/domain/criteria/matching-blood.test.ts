import { expect, it } from "vitest";
import { timelineOf } from "../../../src/domain/criteria/index.ts";
import { bloodOf } from "../../../src/domain/criteria/matching-blood.ts";
import { worldsOf } from "../../../src/domain/criteria/world.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

it("blood stands in the order of days and of numbers, however it is told", () => {
  const timeline = timelineOf({ blood: [{ day: 9 }, { day: 8 }, { day: 9 }, { day: 7 }] });
  const order = (specimens: typeof timeline.specimens) => {
    const [world] = worldsOf({ ...timeline, specimens }, us2024);
    return world && bloodOf(world).map(({ id }) => id);
  };
  const expected = [104, 102, 101, 103];
  expect([order(timeline.specimens), order(timeline.specimens.toReversed())]).toEqual([expected, expected]);
});
