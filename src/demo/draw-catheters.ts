import type { Instant } from "../domain/days/day-number.ts";
import { catheterFrom, type DemoCatheter } from "./course.ts";
import type { Draw } from "./draw.ts";
import type { Leg } from "./patient-path.ts";
import type { DemoWard } from "./wards.ts";

const minuteMs = 60_000;
const hourMs = 60 * minuteMs;
const dayMs = 24 * hourMs;

/** The catheters of an invented stay, without their reviews: one after another, some exchanged, some put in again. */
export function drawCatheters(
  draw: Draw,
  { stay, legs, now }: { stay: string; legs: readonly Leg[]; now: Instant },
): DemoCatheter[] {
  const catheters: DemoCatheter[] = [];
  const end = legs.at(-1)?.to ?? 0;
  let free = 0;
  for (const [i, leg] of legs.entries()) {
    if (leg.from < free || !draw.chance(leg.ward.catheterShare)) continue;
    const came = i === 0 && leg.ward.setting === "inpatient" && draw.chance(0.06);
    let start: Instant | null = came ? leg.from : leg.from + draw.whole(10, 180) * minuteMs;
    while (start !== null && start < Math.min(free === 0 ? leg.to : end, end, now)) {
      const number = `${stay.replace(/^S/, "C")}-${catheters.length + 1}`;
      const one = drawCatheter(draw, { number, start, ward: leg.ward, end, now });
      const first = catheters.length === 0;
      catheters.push(came && first ? { ...one, inserted: null } : one);
      free = one.removed ?? end;
      start = one.removed === null ? null : nextStart(draw, one);
    }
  }
  return catheters;
}

/** When the next one is put in after a removal, if it is: at once in an exchange, or again after half a day or so. */
function nextStart(draw: Draw, { reason, gone }: DemoCatheter): Instant | null {
  if (reason === "exchange") return gone + draw.whole(5, 40) * minuteMs;
  return draw.chance(0.05) ? gone + draw.whole(6 * 60, 20 * 60) * minuteMs : null;
}

function drawCatheter(
  draw: Draw,
  { number, start, ward, end, now }: { number: string; start: Instant; ward: DemoWard; end: Instant; now: Instant },
): DemoCatheter {
  let planned = start + Math.round(draw.wait(ward.meanDwellDays) * 1440 + 120) * minuteMs;
  // Most come out before their patient leaves.
  if (planned >= end && draw.chance(0.75))
    planned = Math.max(end - draw.whole(30, 240) * minuteMs, start + 30 * minuteMs);
  const gone = Math.min(planned, end);
  // Some removals are never written down: the commonest cause of wrong catheter-days (common practice).
  const forgotten = draw.chance(0.02);
  const suprapubic = draw.chance(0.03);
  const why = draw.fraction();
  const reason = why < 0.04 && end - gone > dayMs ? "exchange" : why < 0.08 ? "pulled-out" : "no-longer-needed";
  const removed = forgotten || gone >= end || gone > now ? null : gone;
  const indication = drawIndication(draw, ward);
  const sizeFr = draw.chance(0.7) ? 14 : 16;
  const kind = suprapubic ? "suprapubic" : "indwelling-urethral";
  return catheterFrom(start, {
    ...{ number, kind, gone, removed, reason: removed === null ? null : reason, indication, sizeFr },
  });
}

/** Why a catheter of a ward is in place; null when nobody says. */
export function drawIndication(draw: Draw, { indications }: DemoWard): string | null {
  let left = draw.fraction();
  for (const [code, share] of Object.entries(indications)) {
    left -= share;
    if (left < 0) return code;
  }
  return null;
}
