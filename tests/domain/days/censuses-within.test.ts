import { expect, it } from "vitest";
import { censusTime, day } from "../../../shared/day.ts";
import { censusesWithin, censusTable } from "../../../src/domain/days/census.ts";
import { dayNumber } from "../../../src/domain/days/day-number.ts";
import { zoneNamed } from "../../../src/domain/days/zone.ts";

// The clocks of New York went back on 1 November 2026 (IANA tz database): from then on a census lies an hour further
// than whole days on.
it("a stretch from or to the very instant of a census behind a longer day finds that census", () => {
  const number = (text: string) => dayNumber(day.parse(text));
  const changes = [{ fromDay: number("2026-10-01"), time: censusTime.parse("00:00") }];
  const zone = zoneNamed("America/New_York");
  const censuses = censusTable(zone, changes, number("2026-10-30"), number("2026-11-05"));
  const at = (i: number) => censuses.instants[i] ?? Number.NaN;
  for (let i = 0; i < 7; i++) {
    expect(censusesWithin(censuses, at(i), at(6)), String(i)).toEqual({ from: i, to: 6 });
    expect(censusesWithin(censuses, at(0), at(i)), String(i)).toEqual({ from: 0, to: i });
  }
});
