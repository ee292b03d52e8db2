import type { Day, Month } from "../../../../shared/day.ts";

/*
 * What somebody typed into a field, as it is sent. What cannot be read as the field asks is sent as it was written: the
 * server says at the field what is wrong with it, and how to mend it.
 */

/** A number; an empty field is null, and anything else goes as the text that it is. */
export function numberTyped(text: string): number {
  const trimmed = text.trim();
  const number = Number(trimmed.replace(",", "."));
  return (trimmed === "" ? null : Number.isFinite(number) ? number : trimmed) as number;
}

/** A day, such as `2026-11-20`. */
export function dayTyped(text: string): Day {
  return text.trim() as Day;
}

/** A day that may be left out: null. */
export function dayTypedOrNull(text: string): Day | null {
  return text.trim() === "" ? null : dayTyped(text);
}

/** A month, such as `2026-11`. */
export function monthTyped(text: string): Month {
  return text.trim() as Month;
}
