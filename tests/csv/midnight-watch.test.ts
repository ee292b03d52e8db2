import { expect, it } from "vitest";
import { defaultSourceSettings, type SourceSettings } from "../../shared/source-settings.ts";
import { readSources } from "../../src/csv/read-sources.ts";
import { zoneNamed } from "../../src/domain/days/zone.ts";

const zone = zoneNamed("America/New_York");

async function noticesOf(name: string, lines: readonly string[], midnight: SourceSettings["midnight"] = "time") {
  const open = async function* () {
    yield new TextEncoder().encode(lines.join("\n"));
  };
  const found: string[] = [];
  const reading = { zone, settings: { ...defaultSourceSettings, midnight } };
  for await (const item of readSources([{ name, open }], reading))
    if (item.type === "notice") found.push(`${item.file} ${item.detail}`);
  return found;
}

/** Catheters of which so many are removed at 00:00, and the others at 10:00. */
function removals(midnights: number, all: number): string[] {
  const lines = Array.from(
    { length: all },
    (_, i) => `S${i},2026-03-02T08:00,2026-03-0${i < midnights ? "5T00:00" : "5T10:00"}`,
  );
  return ["stay,inserted,removed", ...lines];
}

it.each<[string, number, number, boolean]>([
  ["exactly a third", 2, 6, false],
  ["more than a third", 3, 6, true],
  ["a third of many", 100, 300, false],
  ["one more than a third of many", 101, 300, true],
  ["all, of fewer than six", 5, 5, false],
])("%s of the times of a column", async (_title, midnights, all, warns) => {
  const detail = `catheters.csv In the column removed ${midnights} of ${all} times are 00:00. If 00:00 means that the hour is not known, choose that in the settings of this import source. For a report, add --midnight no-hour.`;
  expect(await noticesOf("catheters.csv", removals(midnights, all))).toEqual(warns ? [detail] : []);
});

it("says nothing where the source says already that 00:00 is no hour", async () => {
  expect(await noticesOf("catheters.csv", removals(6, 6), "no-hour")).toEqual([]);
});

it("looks at the clocks of the facility, and at times of a day; a day alone is no time", async () => {
  const rows = (cells: readonly string[], row: (cell: string) => string) => cells.map(row);
  const utc = ["05:00Z", "05:00Z", "05:00Z", "00:00Z", "00:00Z", "00:00Z"];
  const moves = rows(utc, (time) => `S,P,A,2026-03-02T${time}`);
  expect(await noticesOf("moves.csv", ["stay,patient,ward,from", ...moves])).toEqual([
    expect.stringMatching(/column from 3 of 6/),
  ]);
  const signs = rows(
    ["00:00", "00:00", "00:00", "10:00", "10:00", "10:00", ""],
    (time) => `S,2026-03-02,${time},dysuria,yes`,
  );
  expect(await noticesOf("signs.csv", ["stay,day,time,sign,present", ...signs])).toEqual([
    expect.stringMatching(/column time 3 of 6/),
  ]);
  const reviews = rows(["", "", "", "", "T00:00", "T00:00"], (time) => `S,2026-03-02${time},keep`);
  expect(await noticesOf("reviews.csv", ["stay,day,outcome", ...reviews])).toEqual([]);
});
