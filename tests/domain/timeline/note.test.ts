import { expect, it } from "vitest";
import { byTime } from "../../../src/domain/timeline/note.ts";

it("notes are in the order in which things happened; of one instant, what was written later comes later", () => {
  const notes = [
    { id: 1, at: 12, writtenAt: 40 },
    { id: 2, at: 12, writtenAt: 30 },
    { id: 5, at: 12, writtenAt: 30 },
    { id: 9, at: 11, writtenAt: 50 },
    { id: 3, at: 13, writtenAt: 13 },
  ];
  expect(notes.sort(byTime).map(({ id }) => id)).toEqual([9, 2, 5, 1, 3]);
});
