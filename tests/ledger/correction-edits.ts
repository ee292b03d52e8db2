import type { CatheterChanges, StayChanges, WardStayChanges } from "../../src/domain/timeline/correct-entry.ts";
import { correctCatheter, correctStay, correctWardStay } from "../../src/usecases/record/correct-entry.ts";
import type { CatheterRecord, StayRecord, WardStayRecord } from "./read-record.ts";
import {
  type Draw,
  dayMs,
  type Scene,
  standingCatheters,
  standingStays,
  standingWardStays,
  timeBetween,
} from "./scene.ts";
import { drawWard } from "./stay-edits.ts";

const reason = "read wrongly";

/** Another admission or discharge, or none. */
export const drawStayCorrected: Draw = (scene) => {
  const stay = scene.chance.maybe(standingStays(scene));
  if (!stay) return null;
  const input = { stayId: stay.id, reason, changes: stayChanges(scene, stay), ...drawVersion(scene, stay) };
  return { said: `correct ${JSON.stringify(input)}`, run: (act) => correctStay(act, input) };
};

function stayChanges(scene: Scene, stay: StayRecord): StayChanges {
  const { chance, now } = scene;
  const wardStays = standingWardStays(scene, stay);
  const firstAt = wardStays[0]?.startAt ?? now;
  const lastAt = wardStays.at(-1)?.endAt ?? now;
  if (chance.percent(40)) return { admittedAt: timeBetween(scene, firstAt - 2 * dayMs, firstAt) };
  if (stay.dischargedAt === null) return { dischargedAt: timeBetween(scene, lastAt) };
  if (chance.percent(15)) return { dischargedAt: null };
  return { dischargedAt: timeBetween(scene, lastAt, Math.min(lastAt + 3 * dayMs, now)) };
}

/** Another ward, beginning, end or kind of absence. */
export const drawWardStayCorrected: Draw = (scene) => {
  const { chance } = scene;
  const stay = chance.maybe(standingStays(scene));
  const list = stay ? standingWardStays(scene, stay) : [];
  const wardStay = chance.maybe(list);
  if (!stay || !wardStay) return null;
  const changes = wardStayChanges(scene, { stay, list, wardStay });
  const input = { wardStayId: wardStay.id, reason, changes, ...drawVersion(scene, wardStay) };
  return { said: `correct ${JSON.stringify(input)}`, run: (act) => correctWardStay(act, input) };
};

function wardStayChanges(
  scene: Scene,
  { stay, list, wardStay }: { stay: StayRecord; list: readonly WardStayRecord[]; wardStay: WardStayRecord },
): WardStayChanges {
  const { chance, now } = scene;
  const place = list.indexOf(wardStay);
  const notBefore = list[place - 1]?.endAt ?? stay.admittedAt;
  const next = list[place + 1]?.startAt;
  const notAfter = next ?? stay.dischargedAt ?? now;
  const roll = chance.below(100);
  if (roll < 20) return { wardId: drawWard(scene) };
  if (roll < 45) return { startAt: timeBetween(scene, notBefore, wardStay.endAt ?? notAfter) };
  if (roll < 50 && next === undefined && stay.dischargedAt === null) return { endAt: null };
  if (roll < 75) return { endAt: timeBetween(scene, wardStay.startAt, notAfter) };
  return { absenceAfter: chance.pick(["procedure", "procedure", "leave", null] as const) };
}

/** Another kind, insertion or removal. */
export const drawCatheterCorrected: Draw = (scene) => {
  const found = scene.chance.maybe(standingCatheters(scene));
  if (!found) return null;
  const { catheter, stay } = found;
  const changes = catheterChanges(scene, catheter, stay);
  const input = { catheterId: catheter.id, reason, changes, ...drawVersion(scene, catheter) };
  return { said: `correct ${JSON.stringify(input)}`, run: (act) => correctCatheter(act, input) };
};

function catheterChanges(scene: Scene, catheter: CatheterRecord, stay: StayRecord): CatheterChanges {
  const { chance, now } = scene;
  const from = Math.max(catheter.insertedAt ?? stay.admittedAt, stay.admittedAt);
  const to = Math.min(stay.dischargedAt ?? now, now);
  const gone = catheter.removedAt ?? catheter.removedAfterAt ?? to;
  const roll = chance.below(100);
  if (roll < 20) return { kind: chance.pick(["indwelling-urethral", "suprapubic"] as const) };
  if (roll < 40) return { insertedAt: timeBetween(scene, stay.admittedAt, gone) };
  if (roll < 50) return { insertedAt: null, inPlaceOnArrival: true };
  const forgotten = { removedAfterAt: null, removedBeforeAt: null };
  if (roll < 70) return { ...forgotten, removedAt: timeBetween(scene, from, to) };
  if (roll < 80) return { ...forgotten, removedAt: null };
  const removedAfterAt = timeBetween(scene, from, to);
  return { removedAt: null, removedAfterAt, removedBeforeAt: timeBetween(scene, removedAfterAt) };
}

/** The version that the person saw, when it is sent at all; seldom an old one. */
export function drawVersion({ chance }: Scene, { version }: { version: number }): { seenVersion?: number } {
  if (chance.percent(60)) return {};
  return { seenVersion: chance.percent(4) ? version - 1 : version };
}
