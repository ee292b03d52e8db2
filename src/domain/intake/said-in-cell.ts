import { dayText } from "../days/day-number.ts";
import { showLocalTime } from "../days/local-time.ts";
import type { Zone } from "../days/zone.ts";
import type { IntakeLine } from "./intake-line.ts";

/** Columns with words of closed lists, which speak of no patient. */
const wordColumns = ["kind", "status", "method", "outcome", "absence", "sign", "present"];

/**
 * What a line that could be read says in a column, as a sentence with a space before it: a time as the facility's local
 * time, or a word of a closed list. Empty for all else, which may speak of a patient: identifiers, free text, the day of
 * birth.
 */
export function saidInCell(
  { values, marks }: Pick<IntakeLine, "values" | "marks">,
  column: string,
  zone: Zone,
): string {
  const value = (values as Readonly<Record<string, unknown>>)[column];
  if (typeof value === "string" && wordColumns.includes(column)) return sentence(value);
  if (typeof value !== "number" || !isTime(column)) return "";
  if (column === "last_day" || (column === "day" && "sign" in values)) return sentence(dayText(value));
  const isDayOnly = marks.some((mark) => mark.kind === "time-unknown" && mark.column === column);
  return sentence(isDayOnly ? dayText(zone.dayOf(value)) : showLocalTime(value, zone));
}

const timeColumns = [
  ...["admitted", "discharged", "from", "to", "inserted", "removed", "last_seen"],
  ...["day", "written", "collected", "last_day", "reviewed"],
];

function isTime(column: string): boolean {
  return timeColumns.includes(column);
}

function sentence(said: string): string {
  return ` The cell says ${JSON.stringify(said)}.`;
}
