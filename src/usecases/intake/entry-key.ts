import { createHash } from "node:crypto";
import type { IntakeLine } from "../../domain/intake/intake-line.ts";

/**
 * What a line is about, whatever it says of it: 132 bits as text. Two lines with one key speak of the same stay, move,
 * catheter, ward or count, so that the latest one that was stored can be found.
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
    case "daily-counts.csv":
      return [line.values.ward, line.values.day];
  }
}
