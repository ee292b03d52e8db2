import { expect, it } from "vitest";
import { day as dayText } from "../../../shared/day.ts";
import { Problem } from "../../../shared/problems.ts";
import { dayNumber } from "../../../src/domain/days/day-number.ts";
import { censusTaken } from "../../../src/usecases/months/census-taken.ts";
import { freshSqlite } from "../../databases/databases.ts";
import { openHospital } from "../../databases/hospital.ts";

/** The code that a question about a day meets at an instant, or null. */
async function refusalOf(setting: { zone: string; census: string }, day: string, now: string): Promise<string | null> {
  const database = await freshSqlite();
  const hospital = await openHospital(database.url, { ...setting, now: Date.UTC(2000, 0, 1) });
  try {
    await censusTaken(hospital.at(Date.parse(now)), dayNumber(dayText.parse(day)), "/day");
    return null;
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    expect(error.faults[0]?.pointer).toBe("/day");
    return error.code;
  } finally {
    await hospital.store.close();
    await database.drop();
  }
}

// Offsets from the IANA time zone database: New York is UTC-5 in November, Apia skipped 2011-12-30.
it.each([
  ["00:00", "America/New_York", "2026-11-20", "2026-11-20T04:59:59Z", "in-the-future"],
  ["00:00", "America/New_York", "2026-11-20", "2026-11-20T05:00:00Z", null],
  ["24:00", "America/New_York", "2026-11-20", "2026-11-21T04:59:59Z", "in-the-future"],
  ["24:00", "America/New_York", "2026-11-20", "2026-11-21T05:00:00Z", null],
  ["12:00", "Pacific/Apia", "2011-12-30", "2011-12-30T10:00:00Z", null],
])("a census at %s in %s on %s, asked for at %s, meets %s", async (census, zone, day, now, code) => {
  expect(await refusalOf({ zone, census }, day, now)).toBe(code);
});
