import type { Subject } from "./determination.ts";

/** Subjects in the order of days; of one day, specimens first. */
export function bySubject(a: Subject, b: Subject): number {
  if (a.day !== b.day) return a.day - b.day;
  return a.kind === b.kind ? a.id - b.id : a.kind === "specimen" ? -1 : 1;
}
