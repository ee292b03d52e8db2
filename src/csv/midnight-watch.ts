import { dayMs } from "../domain/days/day-number.ts";
import type { Reading } from "./column.ts";
import type { CsvLine, CsvNotice } from "./items.ts";
import { layouts } from "./layout.ts";

/** Of fewer times one or two real midnights are more than a third. */
const timesLeast = 6;

interface Times {
  filled: number;
  midnights: number;
}

/**
 * Watches the times of all lines for 00:00 that stands for no hour. Of times that are written to the minute one in 1,440
 * is 00:00 by chance; a column of which more than a third are has another reason.
 */
export class MidnightWatch {
  readonly #reading: Reading;
  readonly #times = new Map<string, Times>();
  readonly #columnsOf = new Map<string, readonly string[]>(
    layouts.map(({ name, columns }) => [
      name,
      Object.entries(columns).flatMap(([column, { reader }]) => (reader.isTime ? [column] : [])),
    ]),
  );

  constructor(reading: Reading) {
    this.#reading = reading;
  }

  /** Looks at the times of a line. */
  add(line: CsvLine): void {
    const values: Readonly<Record<string, unknown>> = line.values;
    for (const column of this.#columnsOf.get(line.file) ?? []) {
      const value = values[column];
      const isDay = line.marks.some((mark) => mark.kind === "time-unknown" && mark.column === column);
      if (value === null || isDay) continue;
      const times = this.#timesOf(`${line.file} ${column}`);
      times.filled += 1;
      if (this.#isMidnight(value)) times.midnights += 1;
    }
  }

  /** A notice for each column that looks so. None where the source says already what 00:00 means. */
  notices(): CsvNotice[] {
    if (this.#reading.settings.midnight === "no-hour") return [];
    return [...this.#times].flatMap(([name, { filled, midnights }]) => {
      if (filled < timesLeast || midnights * 3 <= filled) return [];
      const [file = "", column] = name.split(" ");
      const detail =
        `In the column ${column} ${midnights} of ${filled} times are 00:00. If 00:00 means that the hour is not known, ` +
        "choose that in the settings of this import source. For a report, add --midnight no-hour.";
      return [{ type: "notice", code: "many-midnights", file, detail }];
    });
  }

  #timesOf(name: string): Times {
    const known = this.#times.get(name) ?? { filled: 0, midnights: 0 };
    this.#times.set(name, known);
    return known;
  }

  #isMidnight(value: unknown): boolean {
    return typeof value === "number" ? this.#reading.zone.localAt(value) % dayMs === 0 : value === "00:00";
  }
}
