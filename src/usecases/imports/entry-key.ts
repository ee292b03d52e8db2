import { createHash } from "node:crypto";
import { type IntakeLine, specimenKey } from "../../domain/intake/intake-line.ts";

/**
 * What a line is about, whatever it says of it: 132 bits as text. Two lines with one key speak of the same stay, move,
 * catheter, organism, sign, ward or count, so that the latest one that was stored can be found.
 */
export function entryKey(line: IntakeLine): string {
  const about = JSON.stringify([line.file, ...keyOf(line)]);
  return createHash("sha256").update(about).digest("base64url").slice(0, 22);
}

function keyOf(line: IntakeLine): readonly (string | number | null)[] {
  switch (line.file) {
    case "wards.csv":
      return [line.values.ward];
    case "stays.csv":
      return [line.values.stay];
    case "moves.csv":
      return [line.values.stay, line.values.ward, line.values.from];
    case "catheters.csv":
      return line.values.catheter === null
        ? [line.values.stay, line.values.kind, line.values.inserted]
        : [line.values.stay, line.values.catheter];
    case "reviews.csv":
      // A question and its answer can be of one day.
      return [
        line.values.catheter,
        line.values.stay,
        line.values.day,
        line.values.outcome === "ask" ? "ask" : "answer",
      ];
    case "specimens.csv": {
      // Each report is another thing, so that the lines of an older one are known again beside those of a later one.
      const { organism, status } = line.values;
      return [specimenKey(line.values), status, organism?.toLowerCase() ?? null];
    }
    case "signs.csv":
      return [line.values.stay, line.values.day, line.values.time, line.values.sign];
    case "daily-counts.csv":
      return [line.values.ward, line.values.day];
  }
}
