import { expect, it } from "vitest";
import { refuseFutureLines } from "../../../src/usecases/imports/future-lines.ts";
import { care, catheter, move, review, stay, summary } from "../../domain/intake/lines.ts";

const { zone } = care;

const now = Date.UTC(2026, 10, 25, 12);
const minute = 60_000;

it("lines that speak of a time to come are taken out, each with every such column", () => {
  const well = [
    stay(2, { admitted: now }),
    // Clocks of devices may run ahead by five minutes.
    move(2, { from: now - minute, to: now + 5 * minute }),
    catheter(2, { inserted: null }),
    // Noon of a day that began already: whether it has come is asked of the day.
    review(2, { day: now + 60 * minute }, true),
  ];
  const early = [
    stay(3, { stay: "S2", admitted: now + 6 * minute, discharged: now + 7 * minute }),
    move(3, { stay: "S3", from: now, to: now + 6 * minute }),
    catheter(3, { stay: "S3", inserted: now + 6 * minute, removed: now + 6 * minute, last_seen: now + 6 * minute }),
    review(3, { stay: "S3", day: now + 6 * minute, written: now + 7 * minute }),
  ];
  const seen = [move(9, { from: now + 99 * minute })];
  const { groups, outcomes } = refuseFutureLines([{ identifier: "P1", lines: [...well, ...early], seen }], now, zone);
  expect(groups).toEqual([{ identifier: "P1", lines: well, seen }]);
  expect(outcomes.map(([line, outcome]) => [line, summary(outcome)])).toEqual([
    [early[0], "in-the-future admitted; in-the-future discharged"],
    [early[1], "in-the-future to"],
    [early[2], "in-the-future inserted; in-the-future removed; in-the-future last_seen"],
    [early[3], "in-the-future day; in-the-future written"],
  ]);
  expect(outcomes[1]?.[1]).toEqual({
    state: "refused",
    faults: [
      { code: "in-the-future", column: "to", detail: 'This time has not come yet. The cell says "2026-11-25T12:06".' },
    ],
  });
});

it("a day of birth that has not come yet takes its stay out, and one of today does not", () => {
  const today = Math.floor(now / 86_400_000);
  const lines = [stay(2, { admitted: now, birth_date: today }), stay(3, { stay: "S2", birth_date: today + 1 })];
  const { outcomes } = refuseFutureLines([{ identifier: "P1", lines, seen: [] }], now, zone);
  expect(outcomes.map(([line, outcome]) => [line, summary(outcome)])).toEqual([[lines[1], "in-the-future birth_date"]]);
});

it("everything else that is said of a stay whose own line lies in the future goes with it, naming that line", () => {
  const early = stay(4, { stay: "S4", admitted: now + 6 * minute });
  const about = [move(5, { stay: "S4", from: now - minute }), catheter(6, { stay: "S4", inserted: now - minute })];
  const { groups, outcomes } = refuseFutureLines([{ identifier: "P1", lines: [early, ...about], seen: [] }], now, zone);
  expect(groups).toEqual([{ identifier: "P1", lines: [], seen: [] }]);
  expect(outcomes.map(([line, outcome]) => [line, summary(outcome)])).toEqual([
    [early, "in-the-future admitted"],
    [about[0], "stay-refused stay see stays.csv line 4"],
    [about[1], "stay-refused stay see stays.csv line 4"],
  ]);
});
