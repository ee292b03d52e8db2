import type { FacilityTime } from "../parts/facility-time.ts";
import { catalogue } from "./catalogue.ts";

const text = catalogue("entryTime", { noHour: "{{day}}, hour not recorded" });

/** How a time of an entry is shown: with its hour, or as its day where the hour is not recorded. */
export function entryTime(
  { short, shortDay }: Pick<FacilityTime, "short" | "shortDay">,
  { noHour = [] }: { readonly noHour?: readonly string[] | undefined },
  field: string,
): (at: number) => string {
  return noHour.includes(field) ? (at) => text("noHour", { day: shortDay(at) }) : short;
}
