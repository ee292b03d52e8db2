import type { CatheterKind } from "../../shared/vocabulary.ts";
import { insertCatheter } from "../../src/usecases/record/insert-catheter.ts";
import { removeCatheter } from "../../src/usecases/record/remove-catheter.ts";
import { voidCatheter } from "../../src/usecases/record/void-entry.ts";
import type { CatheterRecord, StayRecord } from "./read-record.ts";
import { type Draw, dayMs, minuteMs, type Scene, standingCatheters, standingStays, timeBetween } from "./scene.ts";

const kinds: readonly CatheterKind[] = [
  "indwelling-urethral",
  "indwelling-urethral",
  "indwelling-urethral",
  "suprapubic",
  "external",
  "intermittent",
  "nephrostomy",
];

/** A catheter put in: also beside another one, of another kind, or with its removal known already. */
export const drawInsertion: Draw = (scene) => {
  const { chance } = scene;
  const stay = chance.maybe(standingStays(scene));
  if (!stay) return null;
  const kind = chance.pick(kinds);
  const insertedAt = timeBetween(scene, stay.admittedAt, stay.dischargedAt ?? scene.now);
  const input = { stayId: stay.id, kind, insertedAt, inPlaceOnArrival: false, ...drawEnd(scene, stay, insertedAt) };
  return { said: `insert ${JSON.stringify(input)}`, run: (act) => insertCatheter(act, input) };
};

/** A catheter found in place on arrival; its insertion may be known. */
export const drawFoundInPlace: Draw = (scene) => {
  const { chance } = scene;
  const stay = chance.maybe(standingStays(scene));
  if (!stay) return null;
  const before = timeBetween(scene, stay.admittedAt - 20 * dayMs, stay.admittedAt + dayMs);
  const insertedAt = chance.percent(30) ? before : null;
  const end = drawEnd(scene, stay, stay.admittedAt);
  const input = { stayId: stay.id, kind: chance.pick(kinds), insertedAt, inPlaceOnArrival: true, ...end };
  return { said: `found in place ${JSON.stringify(input)}`, run: (act) => insertCatheter(act, input) };
};

/** A catheter taken out and another one put in: at once, or a little later. */
export const drawExchange: Draw = (scene) => {
  const { chance } = scene;
  const found = drawInPlace(scene);
  if (!found) return null;
  const catheterId = found.catheter.id;
  const at = timeOfUse(scene, found);
  const insertedAt = at + chance.pick([0, 0, 20 * minuteMs, dayMs]);
  const input = { stayId: found.stay.id, kind: chance.pick(kinds), insertedAt, inPlaceOnArrival: false };
  return {
    said: `exchange catheter ${catheterId} at ${at} for ${JSON.stringify(input)}`,
    run: async (act) => {
      await removeCatheter(act, { catheterId, at });
      await insertCatheter(act, input);
    },
  };
};

/** A removal at one instant. */
export const drawRemoval: Draw = (scene) => {
  const found = drawInPlace(scene);
  if (!found) return null;
  const catheterId = found.catheter.id;
  const at = timeOfUse(scene, found);
  return { said: `remove catheter ${catheterId} at ${at}`, run: (act) => removeCatheter(act, { catheterId, at }) };
};

/** A removal known only to lie between two instants. */
export const drawRemovalBetween: Draw = (scene) => {
  const found = drawInPlace(scene);
  if (!found) return null;
  const catheterId = found.catheter.id;
  const after = timeOfUse(scene, found);
  const before = timeBetween(scene, after);
  return {
    said: `catheter ${catheterId} was removed between ${after} and ${before}`,
    run: (act) => removeCatheter(act, { catheterId, after, before }),
  };
};

/** Voids a catheter. */
export const drawCatheterVoided: Draw = (scene) => {
  const catheterId = scene.chance.maybe(standingCatheters(scene))?.catheter.id;
  if (catheterId === undefined) return null;
  const reason = "recorded in error";
  return { said: `void catheter ${catheterId}`, run: (act) => voidCatheter(act, { catheterId, reason }) };
};

/** A catheter with its stay. */
export interface Found {
  readonly catheter: CatheterRecord;
  readonly stay: StayRecord;
}

/** A catheter without a removal, seldom one with. */
export function drawInPlace(scene: Scene): Found | undefined {
  const isIn = ({ catheter: { removedAt, removedAfterAt } }: Found) => removedAt === null && removedAfterAt === null;
  return scene.chance.maybe(standingCatheters(scene).filter((found) => isIn(found) || scene.chance.percent(3)));
}

/** A time at which the catheter may have been in use. */
export function timeOfUse(scene: Scene, { catheter, stay }: Found): number {
  const from = Math.max(catheter.insertedAt ?? stay.admittedAt, stay.admittedAt);
  const soon = scene.chance.percent(50) ? from + 6 * dayMs : scene.now;
  return timeBetween(scene, from, Math.min(soon, stay.dischargedAt ?? scene.now, scene.now));
}

/** What is known of the removal when a catheter is first recorded: mostly nothing. */
function drawEnd(scene: Scene, stay: StayRecord, from: number): object {
  const { chance } = scene;
  const end = () => timeBetween(scene, from, Math.min(from + 8 * dayMs, stay.dischargedAt ?? scene.now, scene.now));
  if (chance.percent(25)) return { removedAt: end() };
  if (chance.percent(15)) {
    const removedAfterAt = end();
    return { removedAfterAt, removedBeforeAt: timeBetween(scene, removedAfterAt) };
  }
  return {};
}
