import type { readWardDay as endpoint } from "../../../shared/api/ward-days.ts";
import type { InputOf, OutputOf } from "../../../shared/endpoint.ts";
import { dayNumber } from "../../domain/days/day-number.ts";
import type { Act } from "../act.ts";
import { censusTaken } from "./census-taken.ts";
import { loadWardDay } from "./load-ward-day.ts";

/** The patients behind a ward day; the view is recorded. Refuses `in-the-future` and `not-found`. */
export async function readWardDay(
  act: Act,
  { wardId, day: text }: InputOf<typeof endpoint>,
): Promise<OutputOf<typeof endpoint>> {
  const day = dayNumber(text);
  await censusTaken(act, day, "/day");
  return { wardId, day: text, patients: [...(await loadWardDay(act, { wardId, day }))] };
}
