import type { FacilityTime } from "../parts/facility-time.ts";
import { catalogue } from "./catalogue.ts";

const text = catalogue("entryTime", { noHour: "{{day}}, hour not recorded" });

type WithHours = { readonly noHour?: readonly string[] | undefined };

/** How a time of an entry is shown: with its hour, or as its day where the hour is not recorded. */
export function entryTime(
  { short, shortDay }: Pick<FacilityTime, "short" | "shortDay">,
  { noHour = [] }: WithHours,
  field: string,
): (at: number) => string {
  return noHour.includes(field) ? (at) => text("noHour", { day: shortDay(at) }) : short;
}

/** A time of an entry as a form takes it: `2026-11-20T09:30`, a day alone where the hour is not recorded, or nothing. */
export function entryCharted(
  { charted, dayOf }: Pick<FacilityTime, "charted" | "dayOf">,
  { noHour = [] }: WithHours,
  field: string,
): (at: number | null) => string {
  const known = noHour.includes(field) ? dayOf : charted;
  return (at) => (at === null ? "" : known(at));
}
