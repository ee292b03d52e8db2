import type { Draw } from "../../src/demo/draw.ts";

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;

/** A ward stay as drawn; `end` is null for one that lasts beyond the history. */
export interface DrawnWardStay {
  readonly ward: number;
  readonly start: number;
  readonly end: number | null;
  readonly absence: "procedure" | "leave" | null;
  readonly voided: boolean;
}

/** A catheter as drawn. */
export interface DrawnCatheter {
  readonly kind: "indwelling-urethral" | "suprapubic";
  readonly inserted: number | null;
  readonly removed: number | null;
  readonly removedAfter: number | null;
}

/** A stay as drawn: admitted when its first ward stay starts. */
export interface DrawnStay {
  readonly admitted: number;
  readonly discharged: number | null;
  readonly wardStays: readonly DrawnWardStay[];
}

/**
 * Draws a stay of at most `most` ward stays: 2.2 of them and three days each on average, some with time off the wards
 * between them, some recorded in error and voided. Invented: no published figure is claimed.
 */
export function drawStay(
  draw: Draw,
  { admitted, wards, most, until }: { admitted: number; wards: number; most: number; until: number },
): DrawnStay {
  const wardStays: DrawnWardStay[] = [];
  let at = admitted;
  do {
    const start = at;
    const end = start + Math.round((draw.wait(3 * 24) + 1) * 60) * 60_000;
    const ward = draw.whole(1, wards);
    if (end > until) {
      wardStays.push({ ward, start, end: null, absence: null, voided: false });
      return { admitted, discharged: null, wardStays };
    }
    const off = draw.fraction();
    const absence = off < 0.02 ? "procedure" : off < 0.03 ? "leave" : null;
    wardStays.push({ ward, start, end, absence, voided: false });
    if (wardStays.length < most && draw.chance(0.01))
      wardStays.push({ ward: draw.whole(1, wards), start, end, absence: null, voided: true });
    at = off < 0.035 ? end + draw.whole(2, 30) * hourMs : end;
  } while (wardStays.length < most && at < until && draw.chance(0.545));
  return { admitted, discharged: Math.min(at, until), wardStays };
}

/** Draws a catheter of a stay; it may outlast the stay, have come with the patient, or have no known end. */
export function drawCatheter(draw: Draw, stay: DrawnStay, until: number): DrawnCatheter {
  const end = stay.discharged ?? until;
  const inserted = stay.admitted + Math.floor((draw.fraction() * (end - stay.admitted)) / 60_000) * 60_000;
  const removed = Math.min(inserted + Math.round(draw.wait(4) * 1440 + 30) * 60_000, end);
  const doubt = draw.fraction();
  const kind = draw.chance(0.03) ? "suprapubic" : "indwelling-urethral";
  if (doubt < 0.05) return { kind, inserted: null, removed, removedAfter: null };
  if (doubt < 0.08) return { kind, inserted, removed: null, removedAfter: null };
  if (doubt < 0.1 && removed - inserted > dayMs)
    return { kind, inserted, removed: null, removedAfter: removed - hourMs };
  return { kind, inserted, removed, removedAfter: null };
}
