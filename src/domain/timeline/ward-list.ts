import { compareBeds } from "../../../shared/bed-order.ts";
import type { AbsenceKind } from "../../../shared/vocabulary.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import { type Catheter, type PatientTimeline, type Stay, stands, type WardStay } from "./timeline.ts";
import { catheterStretch, holds, standingCatheters, type WardStretch, wardStretches } from "./ward-stretches.ts";

/** Which ward, at which instant, and how far back whoever left is listed. */
export interface WardListQuestion {
  readonly wardId: number;
  readonly at: Instant;
  /** Whoever left at this instant or later is listed. */
  readonly since: Instant;
  readonly dayOf: (at: Instant) => DayNumber;
}

interface OnWard {
  readonly patientId: number;
  readonly stay: Stay;
  readonly wardStay: WardStay;
  /** Since when on the ward: a change of bed there does not begin anew. */
  readonly since: Instant;
}

/** A patient who is on the ward, or whose bed is held there. */
export interface PresentPatient extends OnWard {
  readonly cameFrom: number | null;
  readonly arrivedToday: boolean;
  readonly bedHeld: boolean;
  readonly catheters: readonly Catheter[];
}

/** A patient who left the ward and is not back. */
export interface LeftPatient extends OnWard {
  readonly leftAt: Instant;
  readonly kind: "moved" | "discharged" | "absent";
  readonly absence: AbsenceKind | null;
  readonly toWardId: number | null;
}

/** Who is on a ward at an instant, by bed, and who left it lately, the last to leave first. */
export function wardList(
  timelines: readonly PatientTimeline[],
  question: WardListQuestion,
): { present: PresentPatient[]; left: LeftPatient[] } {
  const { at } = question;
  const stays = timelines.flatMap(({ patientId, stays }) =>
    stays.filter((stay) => stands(stay) && stay.admittedAt <= at).map((stay) => ({ patientId, stay })),
  );
  const present = stays.flatMap((one) => presentOf(one, question) ?? []);
  const here = new Set(present.map(({ patientId }) => patientId));
  const left = stays.filter(({ patientId }) => !here.has(patientId)).flatMap((one) => leftOf(one, question) ?? []);
  return {
    present: present.sort((a, b) => compareBeds(a.wardStay.bed, b.wardStay.bed) || a.patientId - b.patientId),
    left: left.sort((a, b) => b.leftAt - a.leftAt || a.patientId - b.patientId),
  };
}

type OneStay = { readonly patientId: number; readonly stay: Stay };

function presentOf({ patientId, stay }: OneStay, question: WardListQuestion): PresentPatient | null {
  const { wardId, at, dayOf } = question;
  const stretches = wardStretches(stay);
  const index = stretches.findLastIndex((one) => holds(one, at));
  const stretch = stretches[index];
  const bedHeld = stretch?.kind === "procedure";
  if (stretch?.wardId !== wardId || (stretch.kind !== "ward" && !bedHeld)) return null;
  const first = firstOfVisit(stretches, index);
  const since = stretches[first]?.start ?? stretch.start;
  return {
    ...{ patientId, stay, wardStay: wardStayOf(stay, stretch), since, bedHeld },
    cameFrom: stretches[first - 1]?.wardId ?? null,
    arrivedToday: dayOf(since) === dayOf(at),
    catheters: standingCatheters(stay).filter((catheter) => isIn(stay, catheter, at)),
  };
}

function leftOf({ patientId, stay }: OneStay, { wardId, at, since: listedFrom }: WardListQuestion): LeftPatient | null {
  const stretches = wardStretches(stay);
  const index = stretches.findLastIndex(
    ({ kind, wardId: of, start }) => kind === "ward" && of === wardId && start <= at,
  );
  const stretch = stretches[index];
  if (!stretch || stretch.end === null || stretch.end > at || stretch.end < listedFrom) return null;
  const next = stretches[index + 1];
  const isAway = next !== undefined && next.kind !== "ward" && (next.end === null || at < next.end);
  const toWardId = stretches.slice(index + 1).find(({ kind, start }) => kind === "ward" && start <= at)?.wardId ?? null;
  const isGone = stay.dischargedAt !== null && stay.dischargedAt <= at;
  return {
    ...{ patientId, stay, wardStay: wardStayOf(stay, stretch), leftAt: stretch.end, toWardId },
    since: stretches[firstOfVisit(stretches, index)]?.start ?? stretch.start,
    kind: toWardId !== null ? "moved" : isGone ? "discharged" : "absent",
    absence: isAway && next.kind !== "unknown" ? next.kind : null,
  };
}

/** Where the visit to the ward began of which this stretch is part: changes of bed and time away from it go on. */
function firstOfVisit(stretches: readonly WardStretch[], index: number): number {
  const wardId = stretches[index]?.wardId;
  let first = index;
  while (first > 0 && stretches[first - 1]?.wardId === wardId) first--;
  return first;
}

function wardStayOf(stay: Stay, { wardStayId }: WardStretch): WardStay {
  const found = stay.wardStays.find(({ id }) => id === wardStayId);
  if (!found) throw new Error(`stay ${stay.id} has no time on a unit with the number ${wardStayId}`);
  return found;
}

function isIn(stay: Stay, catheter: Catheter, at: Instant): boolean {
  const stretch = catheterStretch(stay, catheter);
  return stretch !== null && holds(stretch, at);
}
