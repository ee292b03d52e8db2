import { Problem, refuse } from "../../../shared/problems.ts";
import { countsAsIndwelling } from "../counting/counts-as-catheter-day.ts";
import { dayMs, type Instant } from "../days/day-number.ts";
import type { CatheterNote } from "../timeline/note.ts";
import { noteTextFaults } from "../timeline/note-text-faults.ts";
import { mayBeInPlace } from "../timeline/removal-within-day.ts";
import { type Catheter, hasNoHour, revise, type Stay, stands, withEntry, withStay } from "../timeline/timeline.ts";
import { catheterStretch } from "../timeline/ward-stretches.ts";
import { correctNote, newNote, placeFaults, wardAt } from "../timeline/write-note.ts";
import type { PlacedReview } from "./intake-line.ts";
import { entryMarks, made, notMadeHere, type Plan, type SameAsRecorded, type StepResult } from "./plan.ts";
import { stayByNumber } from "./plan-stay.ts";

/**
 * Applies a line of reviews.csv: a review of the catheter, or a correction of the one that was recorded for the same time
 * (the same day, where only that is known). A question and an answer of one time are two reviews.
 * Refuses what a review written by a person is refused for, and `stay-unknown`, `catheter-unknown`, `catheter-unclear`,
 * `in-the-future` for a day, `written-too-early`.
 */
export function planReview(plan: Plan, line: PlacedReview): StepResult | SameAsRecorded {
  const place = placeOfReview(plan, line);
  const { stay } = place;
  const at = instantOf(plan, line, place);
  const catheter = inPlaceUntil(place.catheter, at);
  const known = recorded(plan, line, catheter);
  const said = saidBy(line);
  if (known && said.every(([field, value]) => known[field] === value)) {
    made(plan, `note ${known.id}`, line);
    return "unchanged";
  }
  if (known) notMadeHere(plan, `note ${known.id}`);
  const note = known ? correctNote(known, Object.fromEntries(said)) : newReview(plan, line, { catheter, at });
  const policy = plan.care.policyOn(wardAt(stay, note.at), plan.care.zone.dayOf(note.at));
  const [first, ...more] = [
    ...placeFaults(stay, catheter, note, plan.care.zone),
    ...noteTextFaults(note, policy.body),
    ...(note.writtenAt < note.at ? [writtenTooEarly] : []),
  ];
  if (first) throw new Problem(first, ...more);
  plan.reviews.set(note.id, note);
  plan.notes.push({ old: known ?? null, now: note });
  made(plan, `note ${note.id}`, line);
  if (catheter === place.catheter) return { timeline: plan.timeline, marks: [] };
  return { timeline: withStay(plan.timeline, { ...stay, catheters: withEntry(stay.catheters, catheter) }), marks: [] };
}

/** A review on the day of a removal without an hour tells that the removal came later. */
function inPlaceUntil(catheter: Catheter, at: Instant): Catheter {
  const { removedAfterAt: after, removedBeforeAt: before } = catheter;
  if (!hasNoHour(catheter, "removedAt") || after === null || before === null || at <= after || at > before)
    return catheter;
  return revise(catheter, { removedAfterAt: at });
}

/** Remembers a line that was stored before as the one that made its review. */
export function recallReview(plan: Plan, line: PlacedReview): void {
  const stay = stayByNumber(plan.timeline, line.values.stay);
  const known = stay?.catheters.flatMap((catheter) => recorded(plan, line, catheter) ?? []);
  if (known?.[0] && known.length === 1) made(plan, `note ${known[0].id}`, line);
}

const writtenTooEarly = {
  code: "written-too-early",
  pointer: "/writtenAt",
  detail: "The time of entry is before the review.",
} as const;

/** What a line says of its review, an empty cell nothing, except that no reason goes with another outcome than keep. */
function saidBy({ values: { outcome, indication, note } }: PlacedReview) {
  const said: ["outcome" | "indication" | "remark", string | null][] = [["outcome", outcome]];
  if (indication !== null || outcome !== "keep") said.push(["indication", indication]);
  if (note !== null) said.push(["remark", note]);
  return said;
}

function newReview(plan: Plan, line: PlacedReview, { catheter, at }: { catheter: Catheter; at: Instant }) {
  const { outcome, indication, note: remark, written } = line.values;
  const { now, personId } = plan.care;
  const writing = { noteId: plan.newId(), catheterId: catheter.id, writtenAt: written ?? now, writtenBy: personId };
  return newNote(writing, { kind: "review", at, outcome, indication, remark, marks: entryMarks(line) });
}

/** The stay of a line and its catheter in it: the one of that number, or the only one that was in place then. */
function placeOfReview(plan: Plan, line: PlacedReview): { stay: Stay; catheter: Catheter } {
  const stay = stayByNumber(plan.timeline, line.values.stay);
  if (!stay) return refuse("stay-unknown", "No stay has this number.", { pointer: "/stay" });
  const { catheter: number } = line.values;
  const standing = stay.catheters.filter(stands);
  const found = number === null ? inPlaceThen(plan, line, stay) : standing.filter((c) => c.number === number);
  const [catheter, another] = found;
  const pointer = number === null ? "/stay" : "/catheter";
  const unknown = number === null ? "No catheter of this stay was in place then." : "The stay has no such catheter.";
  if (!catheter) return refuse("catheter-unknown", unknown, { pointer });
  if (another) return refuse("catheter-unclear", `The stay has ${found.length} catheters that it can be.`, { pointer });
  return { stay, catheter };
}

/** The catheters in place at the time of a line, or on its day. Reviews are for urethral ones: others only without them. */
function inPlaceThen({ care: { zone } }: Plan, line: PlacedReview, stay: Stay): Catheter[] {
  const at = line.values.day;
  const day = zone.dayOf(at);
  const first = isDayOnly(line) ? zone.firstInstantFrom(day * dayMs) : at;
  const last = isDayOnly(line) ? zone.firstInstantFrom((day + 1) * dayMs) - 1 : at;
  const there = stay.catheters.filter(stands).filter((catheter) => {
    const stretch = mayBeInPlace(stay, catheter);
    return stretch !== null && stretch.start <= last && (stretch.end === null || stretch.end > first);
  });
  const urethral = there.filter(({ kind }) => countsAsIndwelling(kind));
  return urethral.length > 0 ? urethral : there;
}

/** The instant of a review. Where only the day is known: of its instants at which it can have been the nearest to noon. */
function instantOf(
  { care }: Plan,
  line: PlacedReview,
  { stay, catheter }: { stay: Stay; catheter: Catheter },
): Instant {
  const { day: at, written } = line.values;
  if (!isDayOnly(line)) return at;
  const { zone, now } = care;
  const day = zone.dayOf(at);
  if (day > zone.dayOf(now)) refuse("in-the-future", "This day has not come yet.", { pointer: "/at" });
  const stretch = catheterStretch(stay, catheter);
  const earliest = Math.max(zone.firstInstantFrom(day * dayMs), stretch?.start ?? 0);
  const dayEnd = zone.firstInstantFrom((day + 1) * dayMs) - 1;
  const latest = Math.min(dayEnd, now, written ?? now, stretch?.end ?? now);
  return earliest > latest ? at : Math.min(latest, Math.max(earliest, at));
}

function isDayOnly({ marks }: PlacedReview): boolean {
  return marks.some(({ kind, column }) => kind === "time-unknown" && column === "day");
}

/** The review of a catheter that a line speaks of, when there is one already. */
function recorded({ reviews, care: { zone } }: Plan, line: PlacedReview, { id }: Catheter): CatheterNote | undefined {
  const { day: at, outcome } = line.values;
  const dayOnly = isDayOnly(line);
  return [...reviews.values()].find((review) => {
    if (review.catheterId !== id || !stands(review) || (review.outcome === "ask") !== (outcome === "ask")) return false;
    if (dayOnly !== review.marks.includes("time-unknown:at")) return false;
    return dayOnly ? zone.dayOf(review.at) === zone.dayOf(at) : review.at === at;
  });
}
