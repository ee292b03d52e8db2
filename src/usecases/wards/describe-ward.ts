import { type DayNumber, dayMs } from "../../domain/days/day-number.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { runningOn } from "../../domain/timeline/changed-stretches.ts";
import { writeAudit } from "../../store/audit.ts";
import { keepVersions } from "../../store/entry-versions.ts";
import { lockFacility } from "../../store/facilities.ts";
import { lockPatients } from "../../store/patients.ts";
import type { Tx } from "../../store/store.ts";
import { loadTimelines } from "../../store/timelines.ts";
import { touchTimes } from "../../store/trace.ts";
import {
  type NewWard,
  patientsOfWard,
  putWardSetting,
  updateWard,
  type WardDescription,
  type WardRow,
} from "../../store/wards.ts";
import { type Act, recording } from "../act.ts";
import { determineAgain } from "../cultures/determine-again.ts";
import { recount } from "../store-change.ts";
import { knownWard } from "./known-ward.ts";

export interface DescribeWard extends WardDescription {
  readonly wardId: number;
  readonly reason: string;
}

/** How many patients are counted anew at a time when a ward's setting changes. */
const chunkSize = 200;

/**
 * Says what a ward is from a day on. Patient-days that the change touches are counted anew in the same transaction.
 * Refuses `not-found`.
 */
export function describeWard(act: Act, { wardId, reason, ...said }: DescribeWard): Promise<{ wardId: number }> {
  return act.store.tx(async (tx) => {
    const by = recording(act);
    await lockFacility(tx, by.facilityId);
    const ward = await knownWard(tx, by.facilityId, wardId);
    await describeWardIn(tx, act, { ward, said, byHand: true, reason });
    const { fromDay, setting } = said;
    await writeAudit(tx, by, { action: "describe-ward", details: { wardId, fromDay, setting, reason } });
    return { wardId };
  });
}

export interface Description {
  readonly ward: WardRow;
  readonly said: WardDescription;
  /** Changes of what is not dated. */
  readonly undated?: Partial<Omit<NewWard, "code">>;
  readonly byHand: boolean;
  readonly reason?: string;
}

/** {@link describeWard} inside a transaction that holds the facility's row and writes the audit entry itself. */
export async function describeWardIn(tx: Tx, act: Act, description: Description): Promise<void> {
  const { ward, said, undated = {}, byHand, reason } = description;
  const by = { ...recording(act), ...(reason === undefined ? {} : { reason }) };
  await changeUndated(tx, by, ward, { namedOnly: false, ...undated });
  const replaced = ward.settings.find((setting) => setting.fromDay === said.fromDay);
  if (replaced)
    await keepVersions(tx, by, [{ kind: "ward-setting", id: replaced.id, version: replaced.version, body: replaced }]);
  await putWardSetting(tx, by, ward.id, { ...said, byHand });
  const next = ward.settings.find(({ fromDay }) => fromDay > said.fromDay);
  await recountWard(tx, act, { wardId: ward.id, fromDay: said.fromDay, nextDay: next?.fromDay ?? null, reason });
}

/** Changes what is not dated about a ward, and keeps what it was. */
export async function changeUndated(
  tx: Tx,
  by: Parameters<typeof keepVersions>[1],
  ward: WardRow,
  changes: Partial<NewWard>,
): Promise<void> {
  const { settings: _, ...body } = ward;
  await keepVersions(tx, by, [{ kind: "ward", id: ward.id, version: ward.version, body }]);
  await updateWard(tx, by, ward.id, changes);
}

async function recountWard(
  tx: Tx,
  act: Act,
  about: { wardId: number; fromDay: DayNumber; nextDay: DayNumber | null; reason: string | undefined },
): Promise<void> {
  const { wardId, fromDay, nextDay, reason } = about;
  const by = { ...recording(act), ...(reason === undefined ? {} : { reason }) };
  const patients = await patientsOfWard(tx, wardId);
  const zone = zoneNamed((await lockFacility(tx, by.facilityId)).zone);
  const from = zone.firstInstantFrom(fromDay * dayMs);
  const to = nextDay === null ? null : zone.firstInstantFrom(nextDay * dayMs);
  for (let i = 0; i < patients.length; i += chunkSize) {
    const ids = patients.slice(i, i + chunkSize);
    await lockPatients(tx, by.facilityId, ids);
    const timelines = await loadTimelines(tx, ids);
    // Days on the ward that count otherwise decide the eligibility days after them.
    for (const timeline of timelines.values()) touchTimes(tx, ...runningOn([{ from, to }], timeline));
    await recount(
      tx,
      by,
      [...timelines.values()].map((timeline) => ({ timeline, from })),
    );
    await determineAgain(tx, by, { patientIds: ids, cause: "describe-ward" });
  }
}
