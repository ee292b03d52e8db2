import { expect, it } from "vitest";
import { type CatheterSpan, uniteTouching } from "../../../src/domain/criteria/catheter-span.ts";

type Ends = number | null | readonly [after: number, before: number];

/** Of these instants only the day is known. */
interface DayAlone {
  readonly day: number;
}

/** A catheter by its instants; a day has 10. */
function span(id: number, begins: number | DayAlone, until: Ends | DayAlone): CatheterSpan {
  const dayOf = (at: number) => Math.floor(at / 10);
  const start = typeof begins === "number" ? { day: dayOf(begins), at: begins } : { day: begins.day, at: null };
  if (until !== null && typeof until === "object" && "day" in until) {
    const time = { id, kind: "indwelling-urethral", start, end: { ...until, at: null }, latestEndDay: null } as const;
    return { first: start.day, last: until.day, isOpen: false, time };
  }
  const ends = until;
  const [after, before] = typeof ends === "object" && ends !== null ? ends : [];
  const between = after === undefined || before === undefined ? {} : { between: { after, before } };
  const day = dayOf(after ?? (typeof ends === "number" ? ends : 90));
  const end = ends === null ? null : { day, at: typeof ends === "number" ? ends : null, ...between };
  const time = { id, kind: "indwelling-urethral", start, end, latestEndDay: null } as const;
  return { first: start.day, last: day, isOpen: ends === null, time };
}

/** Of a patient who came with the catheter. */
function arrived(of: CatheterSpan): CatheterSpan {
  return { ...of, time: { ...of.time, start: null } };
}

it.each<[string, CatheterSpan[], [number, Ends | undefined][]]>([
  [
    "with a gap stay two",
    [span(1, 20, 30), span(2, 31, 40)],
    [
      [1, 30],
      [2, 40],
    ],
  ],
  ["that touch are one", [span(1, 20, 30), span(2, 30, 40)], [[1, 40]]],
  [
    "of which the first is known in place until the second are one",
    [span(1, 20, [35, 39]), span(2, 34, 52)],
    [[1, 52]],
  ],
  [
    "that may have a gap stay two",
    [span(1, 20, [31, 39]), span(2, 34, 52)],
    [
      [1, [31, 39]],
      [2, 52],
    ],
  ],
  [
    "of which the first may outlast the second are open from its end",
    [span(1, 20, [35, 39]), span(2, 33, 36)],
    [[1, [36, 39]]],
  ],
  [
    "of which the first outlasts the second keep its removal open",
    [span(1, 20, [35, 39]), span(2, 31, 33)],
    [[1, [35, 39]]],
  ],
  [
    "of which the second came at an hour that is not known, while the first stayed days longer, are one",
    [span(1, 20, 52), span(2, { day: 3 }, 44)],
    [[1, 52]],
  ],
  [
    "of which the second came on the day of the removal, at an hour that is not known, stay two",
    [span(1, 20, 38), span(2, { day: 3 }, 44)],
    [
      [1, 38],
      [2, 44],
    ],
  ],
  [
    "that begin on one day, one of them at an hour that is not known, stay two: that hour would hide the known one",
    [span(1, 20, 30), span(2, { day: 3 }, 35), span(3, 30, 35)],
    [
      [1, 35],
      [2, 35],
    ],
  ],
  [
    "of which the first came with the patient, the second on that day at an hour that is not known, are one",
    [arrived(span(1, 20, 35)), span(2, { day: 2 }, { day: 2 })],
    [[1, 35]],
  ],
  [
    "of which the first was out on a later day, at an hour that is not known, are one",
    [span(1, 20, { day: 5 }), span(2, 31, 44)],
    [[1, undefined]],
  ],
  [
    "of which the first was out on the day of the second, at an hour that is not known, stay two",
    [span(1, 20, { day: 3 }), span(2, 31, 44)],
    [
      [1, undefined],
      [2, 44],
    ],
  ],
  [
    "of which the second is out on the same day as the first, at an hour that is not known, are open",
    [span(1, 20, 44), span(2, { day: 3 }, { day: 4 })],
    [[1, undefined]],
  ],
  ["of which the first is in place are in place", [span(1, 20, null), span(2, { day: 3 }, 44)], [[1, undefined]]],
  ["of which the second is in place are in place", [span(1, 20, [35, 39]), span(2, 33, null)], [[1, undefined]]],
])("catheters %s", (_title, spans, united) => {
  const told = uniteTouching(spans).map(({ time: { id, end } }) => {
    return [id, end?.between ? [end.between.after, end.between.before] : (end?.at ?? undefined)];
  });
  expect(told).toEqual(united);
});
