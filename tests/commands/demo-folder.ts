import { createWriteStream } from "node:fs";
import { join } from "node:path";
import { stringify } from "csv-stringify";
import { alderBayLines } from "../../src/demo/alder-bay.ts";
import { dayText } from "../../src/domain/days/day-number.ts";
import { showLocalTime } from "../../src/domain/days/local-time.ts";
import { zoneNamed } from "../../src/domain/days/zone.ts";
import type { IntakeFile } from "../../src/domain/intake/intake-line.ts";

const timeColumns = new Set([
  "from",
  "to",
  "inserted",
  "removed",
  "last_seen",
  "admitted",
  "discharged",
  "day",
  "written",
]);

/** Writes the fictional hospital's lines as files into a folder; returns how many lines each has. */
export async function writeDemoFolder(
  folder: string,
  options: { seed: number; zone: string; now: number; days: number },
): Promise<Partial<Record<IntakeFile, number>>> {
  const zone = zoneNamed(options.zone);
  const files = new Map<IntakeFile, ReturnType<typeof stringify>>();
  const written: Promise<unknown>[] = [];
  const counts: Partial<Record<IntakeFile, number>> = {};
  const timeText = (file: IntakeFile, value: number) =>
    file === "daily-counts.csv" ? dayText(value) : showLocalTime(value, zone);
  for await (const { file, values } of alderBayLines({ ...options, zone })) {
    let out = files.get(file);
    if (!out) {
      out = stringify({ header: true, columns: Object.keys(values) });
      files.set(file, out);
      const target = out.pipe(createWriteStream(join(folder, file)));
      written.push(new Promise<void>((resolve, reject) => target.on("finish", () => resolve()).on("error", reject)));
    }
    counts[file] = (counts[file] ?? 0) + 1;
    const cells = Object.entries(values).map(([column, value]) => {
      if (column === "birth_date" && typeof value === "number") return dayText(value);
      return timeColumns.has(column) && typeof value === "number" ? timeText(file, value) : value;
    });
    out.write(cells);
  }
  for (const out of files.values()) out.end();
  await Promise.all(written);
  return counts;
}
