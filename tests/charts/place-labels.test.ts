import fc from "fast-check";
import { expect, it } from "vitest";
import { placeLabels, shortName } from "../../src/charts/place-labels.ts";

const room = { left: 0, right: 400, top: 0, bottom: 300 };
const points = fc.array(
  fc.record({
    x: fc.integer({ min: 0, max: 400 }),
    y: fc.integer({ min: 0, max: 300 }),
    names: fc.array(fc.string({ minLength: 1, maxLength: 8 }), { minLength: 1, maxLength: 2 }),
  }),
  { maxLength: 40 },
);

it("no two names cover each other, and the first one that has room keeps it", () => {
  fc.assert(
    fc.property(points, (list) => {
      const boxes = placeLabels(list, room).flatMap((place, at) => {
        if (place === null) return [];
        expect(list[at]?.names).toContain(place.name);
        const width = place.name.length * 7;
        const left = place.x - { start: 0, middle: width / 2, end: width }[place.anchor];
        return [[left, place.y - 11, left + width, place.y + 3] as const];
      });
      for (const [at, a] of boxes.entries()) {
        expect(a[0] >= room.left && a[2] <= room.right).toBe(true);
        for (const b of boxes.slice(at + 1))
          expect(a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3]).toBe(false);
      }
    }),
    { numRuns: 60 },
  );
});

it("a name that finds no room is left out, and what comes first is placed first", () => {
  const crowd = Array.from({ length: 12 }, () => ({ x: 200, y: 150, names: ["3E 3/1,210", "3E"] }));
  expect(placeLabels([{ x: 200, y: 150, names: ["3E 3/1,210", "3E"] }], room)).toEqual([
    { name: "3E 3/1,210", x: 209, y: 144, anchor: "start" },
  ]);
  expect(placeLabels([{ x: 395, y: 150, names: ["3E 3/1,210", "3E"] }], room)).toEqual([
    { name: "3E 3/1,210", x: 386, y: 144, anchor: "end" },
  ]);
  const narrow = { ...room, left: 360 };
  expect(placeLabels([{ x: 395, y: 150, names: ["3E 3/1,210", "3E"] }], narrow)[0]?.name).toBe("3E");
  const placed = placeLabels(crowd, room);
  expect(placed.at(-1)).toBeNull();
});

it("long names are cut with a sign that they were", () => {
  expect([shortName("3E", 4), shortName("LONGEST", 4), shortName("ÄÖÜß", 4)]).toEqual(["3E", "LON…", "ÄÖÜß"]);
});
