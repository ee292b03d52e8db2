import type { Month } from "../../shared/day.ts";
import { dayMs } from "../domain/days/day-number.ts";
import { monthDays, monthOf, nextMonth } from "../domain/days/month.ts";
import type { Zone } from "../domain/days/zone.ts";
import type { Act } from "../usecases/act.ts";
import { recordNoneFound } from "../usecases/months/none-found.ts";
import { readInfections } from "../usecases/months/read-infections.ts";
import { watchWard } from "../usecases/settings/watch-ward.ts";
import type { Recorder } from "./record-recent.ts";

/** The wards that the demo watches. */
const watched = ["3E", "3W", "4N", "ICU"];

interface Span {
  readonly zone: Zone;
  readonly days: number;
}

/** Puts wards under surveillance from the first whole month of the demo on. */
export async function watchWards(act: Act, recorder: Recorder, span: Span): Promise<void> {
  const [fromMonth] = monthsOf(act, span);
  if (fromMonth === undefined) return;
  for (const wardId of wardsOf(recorder))
    await watchWard(act, { wardId, fromMonth, toMonth: null, edition: "us-2024" });
}

/** For months that are over, except the last one, somebody confirmed of each watched ward without an event that it had none. */
export async function confirmNoneFound(act: Act, recorder: Recorder, span: Span): Promise<void> {
  const wardIds = wardsOf(recorder);
  for (const month of monthsOf(act, span).slice(0, -2)) {
    const infections = await readInfections(act, { month, wardIds });
    const none = infections.filter(({ cautis, waiting }) => cautis === 0 && waiting === 0);
    // Looked at on the tenth of the month that follows.
    const now = span.zone.firstInstantFrom((monthDays(month).last + 10) * dayMs);
    for (const { wardId } of none) await recordNoneFound({ ...act, now }, { wardId, month });
  }
}

function wardsOf({ wardIds }: Recorder): number[] {
  return watched.flatMap((code) => wardIds.get(code) ?? []);
}

/** The months of the demo that it has whole, and the one that is not over, in order. */
function monthsOf({ now }: Act, { zone, days }: Span): Month[] {
  const today = zone.dayOf(now);
  const months: Month[] = [];
  for (let month = nextMonth(monthOf(today - days)); month <= monthOf(today); month = nextMonth(month))
    months.push(month);
  return months;
}
