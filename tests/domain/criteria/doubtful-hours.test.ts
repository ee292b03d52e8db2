import { expect, it } from "vitest";
import { doubtfulHours, leavesOpen } from "../../../src/domain/criteria/doubtful-hours.ts";
import { determine } from "../../../src/domain/criteria/index.ts";
import { type Story, storyDay, timelineOf } from "../../../src/domain/criteria/story.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const removedOnDay8: Story = {
  catheters: [[2, 8]],
  removedBetween: [0, 24],
  urine: [{ day: 8, grew: [["Escherichia coli", ">100000"]] }],
};
const determined = (changes: Partial<Story>) => {
  const [first] = determine(timelineOf({ ...removedOnDay8, ...changes }), us2024);
  const open = first?.derivation.find(({ status, lookUp }) => status === "cannot-tell" && lookUp !== null);
  return { outcome: first?.outcome, criterion: first?.event?.criterion, open };
};
const dysuria = (hour?: number) => ({
  signs: [{ day: 8, sign: "dysuria", ...(hour === undefined ? {} : { hour }) }] as const,
});

it("a symptom with an hour on the day of a removal without one waits for the hour of the removal", () => {
  const { outcome, open } = determined(dysuria(15));
  expect(outcome).toBe("cannot-tell");
  expect(open?.sentence).toBe("The answer depends on the hour of the catheter's removal on 8 March 2024.");
  expect(open?.lookUp).toBe(
    "Look up at what hour the catheter was removed on 8 March 2024: urgency, frequency and dysuria count only while no catheter is in place.",
  );
  expect(open?.evidence).toEqual([{ kind: "catheter", id: 1 }]);
});

it("without an hour of its own it asks for both", () => {
  const { outcome, open } = determined(dysuria());
  expect(outcome).toBe("cannot-tell");
  expect(open?.lookUp).toMatch(/^Look up at what hour the catheter was removed .* and the hour of urgency/);
});

it.each<[string, Partial<Story>, string, string | undefined]>([
  ["after both times of the removal", { ...dysuria(15), removedBetween: [7, 11] }, "event", "suti-1a"],
  ["before both", { ...dysuria(6), removedBetween: [7, 11] }, "not-met", undefined],
  ["at the last time in place", { ...dysuria(7), removedBetween: [7, 11] }, "not-met", undefined],
  ["at the first time gone", { ...dysuria(11), removedBetween: [7, 11] }, "event", "suti-1a"],
  ["between both", { ...dysuria(9), removedBetween: [7, 11] }, "cannot-tell", undefined],
  ["on the day before", { signs: [{ day: 7, sign: "dysuria", hour: 15 }] }, "not-met", undefined],
  ["on the day after", { signs: [{ day: 9, sign: "dysuria", hour: 3 }] }, "event", "suti-1a"],
  [
    "beside another catheter that is in place",
    {
      ...dysuria(15),
      catheters: [
        [2, null],
        [3, 8],
      ],
    },
    "not-met",
    undefined,
  ],
])("a symptom %s", (_title, changes, outcome, criterion) => {
  expect(determined(changes)).toMatchObject({ outcome, criterion });
});

it("asks for no hour where the answer is the same either way: fever of that day is enough", () => {
  const signs = [...dysuria(15).signs, { day: 8, sign: "38.6" } as const];
  expect(determined({ signs })).toMatchObject({ outcome: "event", criterion: "suti-1a", open: undefined });
});

it("the day of the removal keeps its day of eligibility", () => {
  const signs = [{ day: 9, sign: "38.6" } as const];
  const [first] = determine(timelineOf({ ...removedOnDay8, catheters: [[6, 8]], signs }), us2024);
  expect(first?.event).toMatchObject({ deviceAssociated: true, criterion: "suti-1a" });
});

it("a symptom of the day of an insertion without an hour waits for that hour", () => {
  const { outcome, open } = determined({
    ...{ catheters: [[8, null]], insertedWithoutHour: true, ...dysuria(15) },
  });
  expect(outcome).toBe("cannot-tell");
  expect(open?.lookUp).toContain("inserted on 8 March 2024");
});

it("a removal of which not even the day is known leaves its last possible day open", () => {
  const hours = doubtfulHours(timelineOf({ ...removedOnDay8, latestRemoval: 10 }).catheters);
  const days = hours.map(({ what, day, isDayKnown }) => [what, day - storyDay(0), isDayKnown]);
  expect(days).toEqual([
    ["removal", 8, false],
    ["removal", 10, false],
  ]);
  const open = [8, 9, 10].map((day) => hours.some((one) => leavesOpen(one, { day: storyDay(day), at: null })));
  expect(open).toEqual([true, false, true]);
  expect(doubtfulHours(timelineOf({ ...removedOnDay8, catheters: [[2, 8, "suprapubic"]] }).catheters)).toEqual([]);
});
