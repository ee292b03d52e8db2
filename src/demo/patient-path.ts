import type { Instant } from "../domain/days/day-number.ts";
import type { Draw } from "./draw.ts";
import { type DemoWard, wardOf } from "./wards.ts";

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;

/** Time on one ward of an invented patient's way through the hospital. */
export interface Leg {
  readonly ward: DemoWard;
  readonly bed: string;
  readonly from: Instant;
  readonly to: Instant;
  readonly absence: "procedure" | "leave" | null;
}

/** Where an invented patient goes who comes to a ward at an instant: perhaps through emergency or theater first. */
export function drawPath(draw: Draw, first: DemoWard, arrival: Instant): Leg[] {
  const legs: Leg[] = [];
  let at = arrival;
  const go = (ward: DemoWard, stayMs: number) => {
    const to = at + Math.max(stayMs, hourMs / 2);
    legs.push({ ward, bed: `${draw.whole(1, ward.beds)}`, from: at, to: wholeMinutes(to), absence: null });
    at = wholeMinutes(to);
  };
  const through = draw.fraction();
  if (through < 0.45) go(wardOf("ED"), hourMs * (2 + draw.wait(4)));
  else if (through < 0.6 && first.type !== "rehabilitation ward") go(wardOf("OR"), hourMs * (1.5 + draw.wait(1.5)));
  for (let ward: DemoWard | null = first; ward !== null; ward = nextWard(draw, ward))
    go(ward, dayMs * (0.4 + draw.wait(ward.meanStayDays - 0.4)));
  return withAbsence(draw, legs);
}

function wholeMinutes(at: Instant): Instant {
  return Math.round(at / 60_000) * 60_000;
}

function nextWard(draw: Draw, ward: DemoWard): DemoWard | null {
  let left = draw.fraction();
  for (const [code, share] of Object.entries(ward.next)) {
    left -= share;
    if (left < 0) return wardOf(code);
  }
  return null;
}

/** A few patients leave their ward for some hours in between; of a few nobody says why. */
function withAbsence(draw: Draw, legs: readonly Leg[]): Leg[] {
  return legs.flatMap((leg) => {
    const long = leg.to - leg.from > 2 * dayMs && leg.ward.setting === "inpatient";
    if (!long || !draw.chance(0.04)) return [leg];
    const left = wholeMinutes(leg.from + (leg.to - leg.from) * 0.4);
    const back = left + hourMs * draw.whole(2, 10);
    const why = draw.fraction();
    const absence = why < 0.6 ? "procedure" : why < 0.85 ? "leave" : null;
    return [
      { ...leg, to: left, absence },
      { ...leg, from: back },
    ];
  });
}
