import { refuse } from "../../shared/problems.ts";
import { type DayNumber, dayMs } from "../domain/days/day-number.ts";
import { zoneNamed } from "../domain/days/zone.ts";
import { writeAudit } from "../store/audit.ts";
import { keepVersions } from "../store/entry-versions.ts";
import { lockFacility } from "../store/facilities.ts";
import { lockPatients } from "../store/patients.ts";
import type { Tx } from "../store/store.ts";
import { loadTimelines } from "../store/timelines.ts";
import { addWard, patientsOfWard, putWardSetting, updateWard, type WardDescription, wards } from "../store/wards.ts";
import { type Act, recording } from "./act.ts";
import { recount } from "./store-change.ts";

export interface DescribeWard extends WardDescription {
  readonly code: string;
  readonly openedDay?: DayNumber | null;
  readonly closedDay?: DayNumber | null;
  readonly reason?: string;
}

/** How many patients are counted anew at a time when a ward's setting changes. */
const chunkSize = 200;

/**
 * Says what a ward is from a day on: a new ward, or a change of name, type, setting or beds. Patient-days that the
 * change touches are counted anew in the same transaction.
 */
export function describeWard(act: Act, input: DescribeWard): Promise<{ wardId: number }> {
  return act.store.tx(async (tx) => {
    const by = recording(act);
    await lockFacility(tx, by.facilityId);
    const wardId = await describeWardIn(tx, act, input);
    await writeAudit(tx, by, {
      action: "describe-ward",
      details: { wardId, fromDay: input.fromDay, setting: input.setting, reason: input.reason },
    });
    return { wardId };
  });
}

/** {@link describeWard} inside a transaction that holds the facility's row and writes the audit entry itself. */
export async function describeWardIn(tx: Tx, act: Act, input: DescribeWard): Promise<number> {
  const by = { ...recording(act), ...(input.reason === undefined ? {} : { reason: input.reason }) };
  const { code, openedDay, closedDay, reason: _, ...said } = input;
  if (code.trim() === "") refuse("field-missing", "A ward needs a short code.", { pointer: "/code" });
  const known = (await wards(tx, by.facilityId)).find((ward) => ward.code === code);
  const undated = {
    ...(openedDay === undefined ? {} : { openedDay }),
    ...(closedDay === undefined ? {} : { closedDay }),
    namedOnly: false,
  };
  const wardId = known?.id ?? (await addWard(tx, by, { code, ...undated }));
  if (known) {
    const { settings: _settings, ...body } = known;
    await keepVersions(tx, by, [{ kind: "ward", id: known.id, version: known.version, body }]);
    await updateWard(tx, by, known.id, undated);
  }
  const replaced = known?.settings.find((setting) => setting.fromDay === said.fromDay);
  if (replaced)
    await keepVersions(tx, by, [{ kind: "ward-setting", id: replaced.id, version: replaced.version, body: replaced }]);
  await putWardSetting(tx, by, wardId, said);
  if (known) await recountWard(tx, act, { wardId, fromDay: said.fromDay });
  return wardId;
}

async function recountWard(tx: Tx, act: Act, { wardId, fromDay }: { wardId: number; fromDay: number }): Promise<void> {
  const by = recording(act);
  const patients = await patientsOfWard(tx, wardId);
  const { zone } = await lockFacility(tx, by.facilityId);
  const from = zoneNamed(zone).firstInstantFrom(fromDay * dayMs);
  for (let i = 0; i < patients.length; i += chunkSize) {
    const ids = patients.slice(i, i + chunkSize);
    await lockPatients(tx, by.facilityId, ids);
    const timelines = await loadTimelines(tx, ids);
    await recount(
      tx,
      by,
      [...timelines.values()].map((timeline) => ({ timeline, from })),
    );
  }
}
