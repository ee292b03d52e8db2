import type { Month } from "../../../shared/day.ts";

const names = new Intl.DateTimeFormat("en-US", { month: "long", year: "numeric", timeZone: "UTC" });

/** A month as a person reads it, in US English: "March 2026". */
export function monthName(month: Month): string {
  return names.format(new Date(`${month}-01T00:00:00Z`));
}
