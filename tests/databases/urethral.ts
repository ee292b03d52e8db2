import { type InsertCatheter, insertCatheter } from "../../src/usecases/record/insert-catheter.ts";
import type { AlderBay } from "./alder-bay.ts";
import { utc } from "./utc.ts";

/** An indwelling urethral catheter put in at that time; `more` says what else is known. */
export function urethral(stayId: number, insertedAt: string, more: Partial<InsertCatheter> = {}): InsertCatheter {
  const said = { kind: "indwelling-urethral", insertedAt: utc(insertedAt), inPlaceOnArrival: false } as const;
  return { stayId, ...said, ...more };
}

/** Inserts one, recorded at `recordedAt`. */
export async function inserted(
  bay: AlderBay,
  recordedAt: string,
  ...catheter: Parameters<typeof urethral>
): Promise<number> {
  return (await insertCatheter(bay.at(recordedAt), urethral(...catheter))).catheterId;
}
