import type { Month } from "../../shared/day.ts";
import type { EditionOptions } from "../domain/criteria/index.ts";
import type { Instant } from "../domain/days/day-number.ts";
import { type ChosenReading, type ReadOn, readingsOf } from "../domain/editions/readings.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";
import { daysOfMonths, touchDays } from "./trace.ts";

/** A chosen reading with who chose it, when and why. */
export interface RecordedReading extends ChosenReading {
  readonly reason: string;
  readonly recordedAt: Instant;
  readonly recordedBy: number;
}

/** Every reading that a facility chose, in the order of months; of one month, as they were recorded. */
export async function chosenReadings(read: Read, facilityId: number): Promise<RecordedReading[]> {
  const rows = await read.db.chosenReading.findMany({
    where: { facilityId },
    orderBy: [{ fromMonth: "asc" }, { id: "asc" }],
  });
  return rows.map(({ editionId, option, value, fromMonth, reason, recordedAt, recordedBy }) => ({
    ...{ editionId, reason, recordedBy, recordedAt: recordedAt.getTime() },
    // Written by addChosenReading alone, of a reading that the edition names.
    option: option as keyof EditionOptions,
    value: JSON.parse(value) as EditionOptions[keyof EditionOptions],
    fromMonth: fromMonth as Month,
  }));
}

/** How a facility reads the editions on each day. */
export async function readOnOf(read: Read, facilityId: number): Promise<ReadOn> {
  const row = await read.db.facility.findUnique({
    where: { id: facilityId },
    select: { earlierReadingsThrough: true },
  });
  return readingsOf(await chosenReadings(read, facilityId), row?.earlierReadingsThrough as Month | null | undefined);
}

/** Adds a chosen reading. */
export async function addChosenReading(
  tx: Tx,
  by: Recording,
  { value, ...reading }: ChosenReading & { readonly reason: string },
): Promise<void> {
  touchDays(tx, daysOfMonths({ from: reading.fromMonth, to: null }));
  const recorded = { recordedAt: new Date(by.now), recordedBy: by.personId };
  const data = { id: tx.newId(), facilityId: by.facilityId, ...reading, value: JSON.stringify(value), ...recorded };
  await tx.db.chosenReading.create({ data });
}
