import { expect, it } from "vitest";
import { refuseFutureLines } from "../../../src/usecases/intake/future-lines.ts";
import { catheter, move, stay, summary } from "../../domain/intake/lines.ts";

const now = Date.UTC(2026, 10, 25, 12);
const minute = 60_000;

it("lines that speak of a time to come are taken out, each with every such column", () => {
  const well = [
    stay(2, { admitted: now }),
    // Clocks of devices may run ahead by five minutes.
    move(2, { from: now - minute, to: now + 5 * minute }),
    catheter(2, { inserted: null }),
  ];
  const early = [
    stay(3, { admitted: now + 6 * minute, discharged: now + 7 * minute }),
    move(3, { from: now, to: now + 6 * minute }),
    catheter(3, { inserted: now + 6 * minute, removed: now + 6 * minute, last_seen: now + 6 * minute }),
  ];
  const seen = [move(9, { from: now + 99 * minute })];
  const { groups, outcomes } = refuseFutureLines([{ identifier: "P1", lines: [...well, ...early], seen }], now);
  expect(groups).toEqual([{ identifier: "P1", lines: well, seen }]);
  expect(outcomes.map(([line, outcome]) => [line, summary(outcome)])).toEqual([
    [early[0], "in-the-future admitted; in-the-future discharged"],
    [early[1], "in-the-future to"],
    [early[2], "in-the-future inserted; in-the-future removed; in-the-future last_seen"],
  ]);
});
