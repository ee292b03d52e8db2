import type { PolicyBody } from "../../../shared/policy.ts";
import type { Instant } from "../days/day-number.ts";
import { lastSeen } from "./last-seen.ts";
import { type Entry, hasNoHour, type Stay, stands } from "./timeline.ts";
import { timesWithoutHour } from "./times-without-hour.ts";
import { catheterStretch, standingCatheters, type WardStretch, wardStretches } from "./ward-stretches.ts";

/** What is doubtful about the record of a stay, so that a person can mend it. */
export interface QualityFinding {
  readonly kind: QualityKind;
  readonly wardId: number | null;
  readonly stayId: number;
  /** The entry itself, such as `catheter 12`. */
  readonly entry: string;
  /** From when to when it is doubtful; `end` is null while it lasts. */
  readonly start: Instant;
  readonly end: Instant | null;
}

/** Each kind in words, for one and for several. */
export const qualityKinds = {
  "in-place-on-arrival": ["catheter was in place on arrival", "catheters were in place on arrival"],
  "removal-between": [
    "catheter was found removed; when is known only to lie between two times",
    "catheters were found removed; when is known only to lie between two times",
  ],
  "not-confirmed": [
    "catheter was not confirmed in place for as long as the policy asks, or longer",
    "catheters were not confirmed in place for as long as the policy asks, or longer",
  ],
  "absence-unknown": ["time off the wards is of an unknown kind", "times off the wards are of an unknown kind"],
  "absence-known": ["time off the wards has a recorded reason", "times off the wards have a recorded reason"],
  "bed-held-long": [
    "bed was held during a procedure for longer than the policy says",
    "beds were held during procedures for longer than the policy says",
  ],
  "ward-not-open": [
    "time on a ward lies before anything was said of that ward, and is not counted",
    "times on wards lie before anything was said of these wards, and are not counted",
  ],
  "removal-no-hour": [
    "catheter has a removal without a recorded hour, so its census of that day may be unknown",
    "catheters have removals without a recorded hour, so their census of those days may be unknown",
  ],
  "insertion-no-hour": [
    "catheter has an insertion without a recorded hour, so its census of that day may be unknown",
    "catheters have insertions without a recorded hour, so their census of those days may be unknown",
  ],
  "time-no-hour": [
    "time of a stay or move has no recorded hour; the beginning of its day was taken",
    "times of stays and moves have no recorded hour; the beginnings of their days were taken",
  ],
  "repeated-hour": [
    "local time occurred twice; the earlier one was taken",
    "local times occurred twice; the earlier ones were taken",
  ],
} as const;
export type QualityKind = keyof typeof qualityKinds;

const hourMs = 3_600_000;

/** A catheter that nobody saw for longer than this is doubtful, where no policy says otherwise. Common practice. */
export const confirmationIntervalMs = 48 * hourMs;

/** The time that is looked at. `opensAt`: from when anything is known of a ward. */
export interface QualityPeriod {
  readonly start: Instant;
  readonly end: Instant;
  readonly opensAt?: (wardId: number) => Instant | null;
  /** The end of the facility day of an instant; a day later where it is left out. */
  readonly dayEnd?: (at: Instant) => Instant;
  /** What the policy in force on a ward at an instant says of doubts. */
  readonly policyAt?: (wardId: number | null, at: Instant) => Pick<PolicyBody, "confirmationHours" | "bedHoldHours">;
}

/** What is doubtful about a stay between two instants, as known at `now`. */
export function qualityFindings(stay: Stay, period: QualityPeriod, now: Instant): QualityFinding[] {
  const places = wardStretches(stay);
  const all = [
    ...absences(stay, places),
    ...longHeldBeds(stay, places, { period, now }),
    ...catheterDoubts(stay, places, { period, now }),
    ...repeatedHours(stay),
    ...timesWithoutHour(stay, period),
    ...tooEarly(stay, period),
  ];
  return all.filter((finding) => isWithin(finding, period));
}

/** A stretch leaves its end out, so one that ends as the period begins is of the time before; a point has no length. */
function isWithin({ start, end }: QualityFinding, period: QualityPeriod): boolean {
  return start < period.end && (start >= period.start || end === null || end > period.start);
}

type Places = readonly WardStretch[];

/** The period that is looked at, and what is known by when. */
interface Look {
  readonly period: QualityPeriod;
  readonly now: Instant;
}

function absences(stay: Stay, places: Places): QualityFinding[] {
  return places.flatMap((stretch) =>
    stretch.kind === "ward"
      ? []
      : [
          {
            kind: stretch.kind === "unknown" ? "absence-unknown" : "absence-known",
            wardId: stretch.wardId,
            stayId: stay.id,
            entry: `ward stay ${stretch.wardStayId}`,
            start: stretch.start,
            end: stretch.end,
          },
        ],
  );
}

/** The ward day is kept all the same: somebody has to say whether the patient came back. */
function longHeldBeds(stay: Stay, places: Places, { period: { policyAt }, now }: Look): QualityFinding[] {
  return places.flatMap(({ kind, wardId, wardStayId, start, end }) => {
    const hours = kind === "procedure" ? (policyAt?.(wardId, start).bedHoldHours ?? null) : null;
    if (hours === null || (end ?? now) - start <= hours * hourMs) return [];
    const entry = `ward stay ${wardStayId}`;
    return [{ kind: "bed-held-long", wardId, stayId: stay.id, entry, start: start + hours * hourMs, end }];
  });
}

/** How long a catheter of a patient at these places may go without being seen, from an instant on. */
function confirmationMs(places: Places, { policyAt }: QualityPeriod, seen: Instant): number {
  if (!policyAt) return confirmationIntervalMs;
  const place = places.findLast(({ start }) => start <= seen);
  return policyAt(place?.wardId ?? null, seen).confirmationHours * hourMs;
}

function catheterDoubts(stay: Stay, places: Places, { period, now }: Look): QualityFinding[] {
  return standingCatheters(stay).flatMap((catheter) => {
    const stretch = catheterStretch(stay, catheter);
    if (!stretch) return [];
    const entry = { wardId: null, stayId: stay.id, entry: `catheter ${catheter.id}` };
    const found: QualityFinding[] = [];
    if (catheter.inPlaceOnArrival)
      found.push({ ...entry, kind: "in-place-on-arrival", start: stretch.start, end: stretch.start });
    if (catheter.removedAfterAt !== null && !hasNoHour(catheter, "removedAt"))
      found.push({ ...entry, kind: "removal-between", start: catheter.removedAfterAt, end: catheter.removedBeforeAt });
    if (catheter.removedAt !== null || catheter.removedAfterAt !== null) return found;
    const seen = Math.max(stretch.start, lastSeen(catheter) ?? stretch.start);
    const until = stretch.end ?? now;
    const patience = confirmationMs(places, period, seen);
    if (until - seen >= patience)
      found.push({ ...entry, kind: "not-confirmed", start: seen + patience, end: stretch.end });
    return found;
  });
}

function repeatedHours(stay: Stay): QualityFinding[] {
  const found: QualityFinding[] = [];
  const look = (name: string, entry: Entry, at: Instant, wardId: number | null = null) => {
    if (stands(entry) && entry.marks.some((mark) => mark.startsWith("repeated-hour:")))
      found.push({ kind: "repeated-hour", wardId, stayId: stay.id, entry: name, start: at, end: at });
  };
  look(`stay ${stay.id}`, stay, stay.admittedAt);
  for (const wardStay of stay.wardStays) look(`ward stay ${wardStay.id}`, wardStay, wardStay.startAt, wardStay.wardId);
  for (const catheter of stay.catheters)
    look(`catheter ${catheter.id}`, catheter, catheter.insertedAt ?? stay.admittedAt);
  return found;
}

function tooEarly(stay: Stay, { opensAt }: QualityPeriod): QualityFinding[] {
  return stay.wardStays.filter(stands).flatMap((wardStay) => {
    const opens = opensAt?.(wardStay.wardId) ?? null;
    if (opens === null || wardStay.startAt >= opens) return [];
    const { id, wardId, startAt, endAt } = wardStay;
    const end = endAt === null ? opens : Math.min(endAt, opens);
    return [{ kind: "ward-not-open", wardId, stayId: stay.id, entry: `ward stay ${id}`, start: startAt, end }];
  });
}
