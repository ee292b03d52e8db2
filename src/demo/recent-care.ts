import type { ItemState } from "../../shared/catheter-words.ts";
import type { InsertionRecord } from "../../shared/records.ts";
import { type DayNumber, dayMs, type Instant } from "../domain/days/day-number.ts";
import type { Zone } from "../domain/days/zone.ts";
import { defaultPolicy } from "../domain/policy/default-policy.ts";
import { type Course, type DemoCatheter, legAt } from "./course.ts";
import type { Draw } from "./draw.ts";
import type { DemoWard } from "./wards.ts";

const minuteMs = 60_000;

/** What a round of a ward found at its catheters. */
export interface CareRound {
  readonly ward: string;
  readonly kind: "care-check" | "confirmation";
  readonly writtenAt: Instant;
  readonly found: readonly CareFound[];
}

interface CareFound {
  readonly catheter: string;
  readonly at: Instant;
  readonly items: Readonly<Record<string, ItemState>> | null;
}

/** The hours at which the rounds of a ward begin, and what they do. */
const rounds = [
  { kind: "confirmation", hour: 5 },
  { kind: "care-check", hour: 14 },
] as const;

/** The rounds of the inpatient wards over some days up to now: catheters are seen at night and checked in the afternoon. */
export function careRounds(
  draw: Draw,
  courses: readonly Course[],
  { zone, now, firstDay }: { zone: Zone; now: Instant; firstDay: DayNumber },
): CareRound[] {
  const found = new Map<string, CareRound & { found: CareFound[] }>();
  for (let day = firstDay; day <= zone.dayOf(now); day++)
    for (const { kind, hour } of rounds) {
      const begins = zone.firstInstantFrom(day * dayMs + hour * 60 * minuteMs);
      for (const { legs, catheters } of courses)
        for (const catheter of catheters) {
          const at = begins + draw.whole(0, 60) * minuteMs;
          const ward = legAt(legs, at)?.ward;
          const seen = ward && isThere(catheter, at, now) && draw.chance(kind === "confirmation" ? 0.9 : 0.8);
          if (!seen || ward.setting !== "inpatient") continue;
          const key = `${day} ${kind} ${ward.code}`;
          const round = found.get(key) ?? {
            ward: ward.code,
            kind,
            writtenAt: Math.min(begins + 70 * minuteMs, now),
            found: [],
          };
          const items = kind === "care-check" ? drawItems(draw) : null;
          found.set(key, round);
          round.found.push({ catheter: catheter.number, at, items });
        }
    }
  return [...found.values()];
}

function isThere({ start, gone, unseen }: DemoCatheter, at: Instant, now: Instant): boolean {
  return !unseen && start <= at && at < gone && at <= now;
}

/** Most items are kept, a few not, and a few nobody looked at. */
function drawItems(draw: Draw): Record<string, ItemState> {
  const items: Record<string, ItemState> = {};
  for (const { code } of defaultPolicy.bundle) {
    const state = draw.fraction();
    if (state < 0.96) items[code] = code === "sample-from-port" && state < 0.6 ? "not-applicable" : "kept";
    else if (state < 0.985) items[code] = "broken";
  }
  return items;
}

const responses = ["Tolerated well", "Some discomfort, settled", "Anxious, tolerated well"];

/** What was written down of an insertion: nearly all of it. */
export function drawInsertionRecord(draw: Draw, ward: DemoWard): InsertionRecord {
  const places = { outpatient: "emergency", procedure: "theater", inpatient: "ward" } as const;
  const appearance = draw.fraction();
  const said: InsertionRecord = {
    ...{ orderChecked: true, twoIdentifiersChecked: true, handHygiene: true, packageIntactInDate: true },
    ...{ perinealCareDone: true, sterileTechniqueHeld: draw.chance(0.97), attempts: draw.chance(0.9) ? 1 : 2 },
    ...{ bagBelowBladder: true, urineReturnedMl: draw.whole(5, 70) * 10, insertedIn: places[ward.setting] },
    urineAppearance: appearance < 0.8 ? "clear" : appearance < 0.92 ? "dark" : "cloudy",
    patientResponse: responses[draw.whole(0, responses.length - 1)] ?? "Tolerated well",
    insertedBy: draw.chance(0.85) ? "registered-nurse" : "physician",
  };
  const securement = draw.chance(0.92) ? ({ securement: "device" } as const) : {};
  return { ...said, ...securement, ...(draw.chance(0.8) ? { bagOffFloor: true, teachingGiven: true } : {}) };
}
