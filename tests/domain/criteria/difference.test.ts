import { expect, it } from "vitest";
import { changedDeterminations, determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const grew = [["Escherichia coli", ">100000"]] as const;
const judged = (...signs: number[]) =>
  determine(
    timelineOf({
      urine: [
        { day: 5, grew },
        { day: 25, grew },
      ],
      signs: signs.map((day) => ({ day, sign: "dysuria" })),
    }),
    us2024,
  );

it("names what came to something else, with both, and leaves out what stayed the same", () => {
  const [before, after] = [judged(5), judged(5, 25)];
  expect(changedDeterminations(before, after)).toEqual([
    { subject: { kind: "specimen", id: 2, day: after[1]?.subject.day }, before: before[1], after: after[1] },
  ]);
});

it("names what one of the two does not judge at all", () => {
  const [first, second] = judged(5);
  if (!first || !second) throw new Error("two cultures give two determinations");
  const gone = changedDeterminations([first, second], [second]);
  expect(gone).toEqual([{ subject: first.subject, before: first, after: null }]);
  const come = changedDeterminations([second], [first, second]);
  expect(come).toEqual([{ subject: first.subject, before: null, after: first }]);
});

it("holds a specimen apart from a finding with the same number", () => {
  const [first] = judged(5);
  if (!first) throw new Error("a culture gives a determination");
  const finding = { ...first, subject: { ...first.subject, kind: "finding" as const } };
  expect(changedDeterminations([first], [finding]).map(({ before, after }) => [before, after])).toEqual([
    [first, null],
    [null, finding],
  ]);
});
