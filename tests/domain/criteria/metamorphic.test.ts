import fc from "fast-check";
import { expect, it } from "vitest";
import {
  type Determination,
  determine,
  type SurveillanceTimeline,
  summaryOf,
} from "../../../src/domain/criteria/index.ts";
import { timelineOf } from "../../../src/domain/criteria/story.ts";
import { dayMs } from "../../../src/domain/days/day-number.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";
import { randomEuropeanStory } from "./second/random-european-story.ts";
import { randomStory } from "./second/random-story.ts";
import { strip } from "./second/strip.ts";

const runs = Number(process.env.CHANGED ?? 500);

/** Outcome, event and what it depends on; sentences name days and are left out. */
function told(list: readonly Determination[]) {
  return list.map(({ derivation: _derivation, otherReading: _otherReading, ...rest }) => rest);
}

const storyAndEdition = fc.oneof(
  fc.tuple(randomStory, fc.constant(us2024)),
  fc.tuple(randomEuropeanStory, fc.constant(ecdc2017)),
);

/** Says the same of a random timeline before and after a change that must not matter. */
function expectSame(change: (timeline: SurveillanceTimeline) => SurveillanceTimeline, back = told): void {
  const property = fc.property(storyAndEdition, ([story, edition]) => {
    const timeline = timelineOf(story);
    const [before, after] = [told(determine(timeline, edition)), back(determine(change(timeline), edition))];
    expect(after, strip(story)).toEqual(before);
  });
  fc.assert(property, { numRuns: runs });
}

const shiftDays = 1000;

/** Every day and instant in a value moved; other numbers stay. */
function shifted<T>(value: T, days: number): T {
  const text = JSON.stringify(value, (key, item: unknown) => {
    if (typeof item !== "number") return item;
    if (instantNames.has(key)) return item + days * dayMs;
    return dayNames.has(key) ? item + days : item;
  });
  return JSON.parse(text) as T;
}

const instantNames = new Set(["at", "after", "before"]);
const dayNames = new Set([
  "day",
  "knownThrough",
  "birthDay",
  "deathDay",
  "donorSupportFrom",
  "dischargeDay",
  "latestEndDay",
  "lastDay",
  "readDay",
  "first",
  "last",
  "usableFrom",
  "dateOfEvent",
  "firstElementDay",
]);

it("moving all days moves the answer with them", () => {
  const move = (timeline: SurveillanceTimeline) => shifted(timeline, shiftDays);
  expectSame(move, (list) => shifted(told(list), -shiftDays));
});

it("the order of the lists does not matter", () => {
  expectSame((timeline) => ({
    ...timeline,
    stays: timeline.stays.toReversed().map((stay) => ({ ...stay, wardTimes: stay.wardTimes.toReversed() })),
    catheters: timeline.catheters.toReversed(),
    specimens: timeline.specimens.toReversed().map((one) => ({ ...one, organisms: one.organisms.toReversed() })),
    signs: timeline.signs.toReversed(),
    findings: timeline.findings.toReversed(),
  }));
});

/** Days of whatever starts a determination, or could support one. */
function anchorDays({ specimens, findings }: SurveillanceTimeline): number[] {
  return [...specimens.map(({ collected }) => collected.day), ...findings.map(({ when }) => when.day)];
}

it("a sign far from every window does not matter", () => {
  const far = {
    sign: "suprapubic-tenderness",
    finding: "present",
    temperature: null,
    otherCause: false,
    review: null,
  } as const;
  expectSame((timeline) => {
    const first = Math.min(...anchorDays(timeline));
    const when = (day: number) => ({ day, at: null });
    const signs = [
      { ...far, id: 9001, when: when(first - 4) },
      { ...far, id: 9002, when: when(timeline.knownThrough + 1) },
    ];
    return { ...timeline, signs: [...timeline.signs, ...signs] };
  });
});

it("a catheter written as two that meet at midnight does not matter", () => {
  expectSame((timeline) => ({
    ...timeline,
    catheters: timeline.catheters.flatMap((one) => {
      const end = one.end?.day ?? timeline.knownThrough;
      const day = one.start === null ? null : one.start.day + 1;
      if (day === null || day > end) return [one];
      const midnight = day * dayMs;
      return [
        { ...one, end: { day: day - 1, at: midnight }, latestEndDay: null },
        { ...one, id: one.id + 500, start: { day, at: midnight } },
      ];
    }),
  }));
});

it("a culture that is told twice adds nothing but a repeat of itself", () => {
  const property = fc.property(randomStory, (story) => {
    const timeline = timelineOf(story);
    const twice = timeline.specimens
      .filter(({ kind }) => kind === "urine")
      .map((one) => ({ ...one, id: one.id + 5000 }));
    const before = determine(timeline, us2024);
    const after = determine({ ...timeline, specimens: [...timeline.specimens, ...twice] }, us2024);
    const events = (list: readonly Determination[]) =>
      list.filter(({ event }) => event !== null).map((one) => `${one.subject.id} ${summaryOf(one)}`);
    expect(events(after), strip(story)).toEqual(events(before));
    expect(after).toHaveLength(before.length + twice.length);
  });
  fc.assert(property, { numRuns: runs });
});

it("what comes later than all windows and periods does not matter", () => {
  expectSame((timeline) => {
    const last = Math.max(...anchorDays(timeline));
    const [example] = timeline.specimens;
    if (!example || last + 30 > timeline.knownThrough) return timeline;
    const blood = { ...example, id: 7001, kind: "blood", collected: { day: last + 18, at: null } } as const;
    return { ...timeline, specimens: [...timeline.specimens, blood] };
  });
});
