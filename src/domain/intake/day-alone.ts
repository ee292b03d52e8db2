import type { Instant } from "../days/day-number.ts";
import { type RemovalTimes, removalWithinDay } from "../timeline/removal-within-day.ts";
import type { Catheter, Entry, Mark } from "../timeline/timeline.ts";
import type { LineOf, PatientLine } from "./intake-line.ts";
import { entryMarks, type Plan } from "./plan.ts";

/** Whether a line gives a day alone in a column: 00:00 of a source that means by it that the hour is not known. */
export function givesDayAlone({ marks }: Pick<PatientLine, "marks">, column: string): boolean {
  return marks.some((mark) => mark.kind === "no-hour" && mark.column === column);
}

/** Whether two instants are on one facility day. */
function isSameDay({ care: { zone } }: Plan, one: Instant, other: Instant): boolean {
  return zone.dayOf(one) === zone.dayOf(other);
}

/**
 * The time that a line gives. Where it gives a day alone, what is recorded of that day stays, for it may have an hour, and
 * nothing comes before `earliest`, as when a patient was moved on the day of the admission.
 */
export function timeOf(
  plan: Plan,
  { line, column }: { line: PatientLine; column: string },
  { recorded, earliest }: { recorded?: Instant | null | undefined; earliest?: Instant | null | undefined },
): Instant | null {
  const at = (line.values as Readonly<Record<string, unknown>>)[column];
  if (typeof at !== "number") return null;
  if (!givesDayAlone(line, column)) return at;
  if (recorded != null && isSameDay(plan, recorded, at)) return recorded;
  return earliest != null && isSameDay(plan, earliest, at) ? Math.max(earliest, at) : at;
}

/** Whether a recorded time is the one that a line gives, or of the day that it gives alone. */
export function isTimeOf(
  plan: Plan,
  { line, column }: { line: PatientLine; column: string },
  recorded: Instant | null,
): boolean {
  const at = (line.values as Readonly<Record<string, unknown>>)[column];
  if (recorded === at || typeof at !== "number" || recorded === null) return recorded === at;
  return givesDayAlone(line, column) && isSameDay(plan, recorded, at);
}

/**
 * The removal of a catheter whose line gives its day alone, within that day. What is recorded of a removal on that day
 * stays. Empty for a line that gives an hour, or none.
 */
export function removalOnDay(
  plan: Plan,
  line: LineOf<"catheters.csv">,
  known: Catheter | undefined,
): RemovalTimes | Record<never, never> {
  const { removed, inserted, last_seen: seen } = line.values;
  if (removed === null || !givesDayAlone(line, "removed")) return {};
  if (known) {
    const { removedAt, removedAfterAt, removedBeforeAt } = known;
    const ends = [removedAt ?? removedAfterAt, removedAt ?? removedBeforeAt];
    if (ends.every((at) => at !== null && isSameDay(plan, at, removed))) {
      return { removedAt, removedAfterAt, removedBeforeAt };
    }
  }
  return removalWithinDay(removed, [{ insertedAt: inserted, lastSeenAt: seen }, known], plan.care);
}

/** The fields that change together with one that can be marked. */
const fieldsOf: Readonly<Record<string, readonly string[]>> = {
  removedAt: ["removedAt", "removedAfterAt", "removedBeforeAt"],
};

/** The marks of an entry that a line is told over: a recorded time that stays keeps its own, with an hour or without. */
export function marksOver(line: PatientLine, known: Entry | undefined, said: object): Mark[] {
  if (!known) return entryMarks(line);
  const [before, after] = [known, said] as unknown as Readonly<Record<string, unknown>>[];
  const stays = (mark: Mark): boolean => {
    const field = mark.slice(mark.indexOf(":") + 1);
    return (fieldsOf[field] ?? [field]).every((name) => !after || !(name in after) || after[name] === before?.[name]);
  };
  const isNoHour = (mark: Mark) => mark.startsWith("no-hour:");
  const given = entryMarks(line).filter((mark) => !(isNoHour(mark) && stays(mark)));
  return [...known.marks.filter((mark) => isNoHour(mark) && stays(mark) && !given.includes(mark)), ...given];
}
