import type { DayNumber, Instant } from "../../domain/days/day-number.ts";
import { showLocalTime } from "../../domain/days/local-time.ts";
import type { DaysOfPatient } from "../cultures/change-culture.ts";
import { momentOf } from "../cultures/given-signs.ts";

/** When something happened: a day, and an instant of it where the time is known. */
interface Moment {
  readonly day: DayNumber;
  readonly at: Instant | null;
}

/** The moment of an entry that is given anew: null when it stays as it was. */
export interface MovedMoment extends Pick<ReturnType<typeof momentOf>, "marks" | "faults"> {
  readonly when: Moment | null;
}

/**
 * The day and instant of an entry that a correction gives another day or time; a time of null takes it away. An entry of
 * another day keeps its hour unless one is given, and a day to come is refused without reading its hour.
 */
export async function movedMoment(
  old: Moment,
  { day = old.day, time }: { readonly day?: DayNumber | undefined; readonly time?: string | null | undefined },
  { daysOf, now }: { daysOf: () => Promise<DaysOfPatient>; now: Instant },
): Promise<MovedMoment> {
  if (day === old.day && time === undefined) return { when: null, marks: [], faults: [] };
  const days = await daysOf();
  const kept = old.at === null ? null : showLocalTime(old.at, days.zone).slice("YYYY-MM-DDT".length);
  const given = { day, time: day > days.today ? null : time === undefined ? kept : time };
  const { at, marks, faults } = momentOf(given, { zone: days.zone, now, pointer: "/time" });
  const ofDay = day === old.day ? [] : days.faultsOf(day, "/day");
  return { when: { day, at }, marks, faults: [...ofDay, ...faults] };
}
