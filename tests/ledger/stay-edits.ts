import { admitPatient } from "../../src/usecases/record/admit-patient.ts";
import { cancelMove } from "../../src/usecases/record/cancel-move.ts";
import { cancelDischarge, dischargePatient } from "../../src/usecases/record/discharge-patient.ts";
import { movePatient } from "../../src/usecases/record/move-patient.ts";
import { recordAbsence } from "../../src/usecases/record/record-absence.ts";
import { voidStay, voidWardStay } from "../../src/usecases/record/void-entry.ts";
import { type Draw, dayMs, type Scene, standingStays, standingWardStays, timeBetween } from "./scene.ts";

const identifiers = ["A-1", "A-2", "A-3", "A-4"] as const;
const reason = "recorded in error";

/** Admits somebody who is not here, seldom somebody who is. */
export const drawAdmission: Draw = (scene) => {
  const { record, chance, focus, number } = scene;
  const known = (identifier: string) => record.patients.find((p) => p.identifier === identifier);
  const able = identifiers.filter((i) => focus === null || known(i)?.survivorId === focus);
  const identifier = chance.maybe(able);
  if (identifier === undefined) return null;
  const survivor = known(identifier)?.survivorId;
  const stays = survivor === undefined ? [] : standingStays({ ...scene, focus: survivor });
  if (stays.some((stay) => stay.dischargedAt === null) && !chance.percent(8)) return null;
  const free = Math.max(scene.start, ...stays.map((stay) => stay.dischargedAt ?? scene.now));
  const admittedAt = timeBetween(scene, chance.percent(70) ? Math.max(free, scene.now - 4 * dayMs) : free);
  const wardId = drawWard(scene);
  return {
    said: `admit ${identifier} to ward ${wardId} at ${admittedAt}`,
    run: (act) => admitPatient(act, { patient: { identifier }, number: `S-${number}`, admittedAt, wardId }),
  };
};

/** Moves somebody, now or written down late. */
export const drawMove: Draw = (scene) => {
  const stay = scene.chance.maybe(standingStays(scene));
  if (!stay) return null;
  const stayId = stay.id;
  const movedAt = timeInStay(scene, stayId);
  const wardId = drawWard(scene);
  return {
    said: `move stay ${stayId} to ward ${wardId} at ${movedAt}`,
    run: (act) => movePatient(act, { stayId, movedAt, wardId }),
  };
};

/** An absence of any kind, with or without a return. */
export const drawAbsence: Draw = (scene) => {
  const { chance } = scene;
  const stay = chance.maybe(standingStays(scene));
  if (!stay) return null;
  const stayId = stay.id;
  const on = chance.maybe(standingWardStays(scene, stay).filter((w) => w.endAt === null || w.endAt > w.startAt));
  const leftAt = on ? timeBetween(scene, on.startAt, on.endAt ?? scene.now) : timeInStay(scene, stayId);
  const backBy = Math.min(on?.endAt ?? scene.now, leftAt + 3 * dayMs);
  const backAt = chance.percent(85) ? timeBetween(scene, leftAt, backBy) : null;
  const kind = chance.pick(["procedure", "procedure", "leave", null] as const);
  return {
    said: `absence (${kind}) of stay ${stayId} from ${leftAt} to ${backAt}`,
    run: (act) => recordAbsence(act, { stayId, leftAt, kind, backAt }),
  };
};

/** Discharges somebody, seldom twice. */
export const drawDischarge: Draw = (scene) => {
  const { chance } = scene;
  const stays = standingStays(scene).filter((stay) => stay.dischargedAt === null || chance.percent(3));
  const stay = chance.maybe(stays);
  if (!stay) return null;
  const stayId = stay.id;
  const dischargedAt = timeBetween(scene, lastInstant(scene, stayId));
  return {
    said: `discharge stay ${stayId} at ${dischargedAt}`,
    run: (act) => dischargePatient(act, { stayId, dischargedAt }),
  };
};

/** Takes a discharge back. */
export const drawDischargeCancelled: Draw = (scene) => {
  const stays = standingStays(scene).filter((stay) => stay.dischargedAt !== null || scene.chance.percent(3));
  const stay = scene.chance.percent(70) ? stays.at(-1) : scene.chance.maybe(stays);
  if (!stay) return null;
  const stayId = stay.id;
  return { said: `cancel the discharge of stay ${stayId}`, run: (act) => cancelDischarge(act, { stayId, reason }) };
};

/** Takes a move back, seldom the first one of a stay. */
export const drawMoveCancelled: Draw = (scene) => {
  const wardStayId = drawWardStay(scene);
  if (wardStayId === undefined) return null;
  return { said: `cancel move ${wardStayId}`, run: (act) => cancelMove(act, { wardStayId, reason }) };
};

/** Voids a ward stay, seldom the only one of a stay. */
export const drawWardStayVoided: Draw = (scene) => {
  const wardStayId = drawWardStay(scene);
  if (wardStayId === undefined) return null;
  return { said: `void ward stay ${wardStayId}`, run: (act) => voidWardStay(act, { wardStayId, reason }) };
};

/** Voids a stay. */
export const drawStayVoided: Draw = (scene) => {
  const stayId = scene.chance.maybe(standingStays(scene))?.id;
  if (stayId === undefined) return null;
  return { said: `void stay ${stayId}`, run: (act) => voidStay(act, { stayId, reason }) };
};

/** Any ward; the first three, which begin as inpatient wards, more often. */
export function drawWard({ record, chance }: Scene): number {
  const ids = record.wards.map((ward) => ward.id);
  return chance.pick(chance.percent(70) ? ids.slice(0, 3) : ids);
}

function drawWardStay(scene: Scene): number | undefined {
  const firstToo = scene.chance.percent(6);
  const able = standingStays(scene).flatMap((stay) => standingWardStays(scene, stay).slice(firstToo ? 0 : 1));
  return scene.chance.maybe(able)?.id;
}

/** A time in a stay: late in it as often as anywhere. */
function timeInStay(scene: Scene, stayId: number): number {
  const stay = scene.record.stays.find((s) => s.id === stayId);
  const from = stay?.admittedAt ?? scene.start;
  const late = Math.min(lastInstant(scene, stayId), stay?.dischargedAt ?? scene.now);
  return timeBetween(scene, scene.chance.percent(50) ? late : from, stay?.dischargedAt ?? scene.now);
}

/** The last instant of anything recorded in a stay, its end left out. */
function lastInstant(scene: Scene, stayId: number): number {
  const { record } = scene;
  const instants = [
    ...record.stays.filter((s) => s.id === stayId).map((s) => s.admittedAt),
    ...record.wardStays.filter((w) => w.stayId === stayId && w.voidKey === 0).flatMap((w) => [w.startAt, w.endAt]),
    ...record.catheters.filter((c) => c.stayId === stayId && c.voidKey === 0).map((c) => c.insertedAt),
  ];
  return Math.max(scene.start, ...instants.filter((at) => at !== null));
}
