import { closeSync, openSync, writeSync } from "node:fs";
import { join } from "node:path";
import { alderBayLines } from "../../src/demo/alder-bay.ts";
import { dayText } from "../../src/domain/days/day-number.ts";
import { showLocalTime } from "../../src/domain/days/local-time.ts";
import { zoneNamed } from "../../src/domain/days/zone.ts";
import type { IntakeFile } from "../../src/domain/intake/intake-line.ts";
import { benchZone, historyEnd } from "./history-size.ts";

/** How many fictional hospitals are put together into one, and over how many days. */
export interface FolderSize {
  readonly seed: number;
  readonly hospitals: number;
  readonly days: number;
}

const timeColumns = new Set(["from", "to", "inserted", "removed", "last_seen", "written", "admitted", "discharged"]);
const nameColumns = new Set(["stay", "patient", "catheter"]);
const blockLines = 2000;

/** Writes files of the fictional hospital's lines into a folder; returns how many lines each has without its header. */
export async function writeFolder(folder: string, { seed, hospitals, days }: FolderSize): Promise<Map<string, number>> {
  const zone = zoneNamed(benchZone);
  const files = new Map<IntakeFile, CsvWriter>();
  for (let i = 0; i < hospitals; i++) {
    for await (const { file, values } of alderBayLines({ seed: seed + i, zone, now: historyEnd, days })) {
      // The wards and what was counted on them are the same; patients, stays and catheters of each hospital get own names.
      if ((file === "wards.csv" || file === "daily-counts.csv") && i > 0) continue;
      let writer = files.get(file);
      if (!writer) {
        writer = new CsvWriter(join(folder, file), Object.keys(values));
        files.set(file, writer);
      }
      const cells = Object.entries(values).map(([column, value]) => {
        if (typeof value !== "number")
          return nameColumns.has(column) && value !== null ? `${i}-${value}` : `${value ?? ""}`;
        if (column === "birth_date" || (column === "day" && file === "daily-counts.csv")) return dayText(value);
        return column === "day" || timeColumns.has(column) ? showLocalTime(value, zone) : `${value}`;
      });
      writer.add(cells.join(","));
    }
  }
  for (const writer of files.values()) writer.close();
  return new Map([...files].map(([file, writer]) => [file, writer.lines]));
}

/** Writes a file some lines at a time. No value of the fictional hospital needs quotes. */
class CsvWriter {
  readonly #file: number;
  #block: string[];
  lines = 0;

  constructor(path: string, columns: readonly string[]) {
    this.#file = openSync(path, "w");
    this.#block = [columns.join(",")];
  }

  add(line: string): void {
    this.#block.push(line);
    this.lines += 1;
    if (this.#block.length >= blockLines) this.#flush();
  }

  close(): void {
    this.#flush();
    closeSync(this.#file);
  }

  #flush(): void {
    if (this.#block.length > 0) writeSync(this.#file, `${this.#block.join("\n")}\n`);
    this.#block = [];
  }
}
