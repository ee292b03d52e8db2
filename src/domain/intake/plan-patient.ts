import type { Instant } from "../days/day-number.ts";
import type { CatheterNote } from "../timeline/note.ts";
import { type PatientTimeline, type Stay, withStay } from "../timeline/timeline.ts";
import { type CultureFile, type LineOf, type PatientLine, type PlacedReview, placeOf } from "./intake-line.ts";
import type { Outcome } from "./outcome.ts";
import { applyLine, type CareRules, made, type NoteChange, type Plan, refuseLine } from "./plan.ts";
import { planCatheter, recallCatheter } from "./plan-catheter.ts";
import { applyCultures, type CultureChanges, type Cultures, cultureChanges } from "./plan-cultures.ts";
import { planMove, recallMove } from "./plan-move.ts";
import { planReview, recallReview } from "./plan-review.ts";
import { recallSign } from "./plan-sign.ts";
import { recallSpecimen } from "./plan-specimen.ts";
import { planStay, recallStay, stayByNumber, withRoom } from "./plan-stay.ts";

/** What lines about one patient make of what is recorded. */
export interface PatientPlan {
  readonly timeline: PatientTimeline;
  /** Reviews that lines made or changed. They stand beside the timeline, which does not know them yet. */
  readonly notes: readonly NoteChange[];
  readonly cultures: CultureChanges;
  /** What becomes of each line. */
  readonly outcomes: ReadonlyMap<PatientLine, Outcome>;
}

/**
 * Applies the lines about one patient in the order of time: stay by stay, its moves, then its catheters and their
 * reviews; specimens and signs after all stays. A line that contradicts what was recorded, or an earlier line, is refused and leaves no trace; the others stand.
 * `seen` are lines of the same folder that were stored before: they change nothing, and no other line may contradict
 * them. `reviews` are those recorded of the patient's catheters. `newId` gives the ids of new entries; every ward
 * that is named has an id.
 */
export function planPatient(
  start: {
    timeline: PatientTimeline;
    patientId: number;
    seen?: readonly PatientLine[];
    reviews?: readonly CatheterNote[];
    cultures?: Cultures;
  },
  lines: readonly PatientLine[],
  given: { wardIds: ReadonlyMap<string, number>; newId: () => number; care: CareRules },
): PatientPlan {
  const { timeline, patientId, seen = [], reviews = [], cultures = noCultures } = start;
  const known = new Map(reviews.map((review) => [review.id, review]));
  const plan: Plan = {
    ...given,
    timeline,
    patientId,
    reviews: known,
    notes: [],
    cultures: { specimens: byId(cultures.specimens), signs: byId(cultures.signs) },
    outcomes: new Map(),
    madeBy: new Map(),
  };
  for (const line of seen) recall(plan, line);
  for (const stay of byStay(lines, timeline)) {
    const recorded = stay.stays[0] && stayByNumber(plan.timeline, stay.stays[0].values.stay);
    if (recorded && stay.stays[0]) applyToKnown(plan, stay, recorded);
    else applyToNew(plan, stay);
    applyReviews(plan, stay);
  }
  applyCultures(plan, lines);
  const { notes, outcomes } = plan;
  return { timeline: plan.timeline, notes, cultures: cultureChanges(plan, cultures), outcomes };
}

const noCultures: Cultures = { specimens: [], signs: [] };

function byId<T extends { readonly id: number }>(entries: readonly T[]): Map<number, T> {
  return new Map(entries.map((entry) => [entry.id, entry]));
}

function recall(plan: Plan, line: PatientLine): void {
  if (line.file === "stays.csv") recallStay(plan, line);
  else if (line.file === "moves.csv") recallMove(plan, line);
  else if (line.file === "catheters.csv") recallCatheter(plan, line);
  else if (line.file === "reviews.csv") recallReview(plan, line);
  else if (line.file === "specimens.csv") recallSpecimen(plan, line);
  else recallSign(plan, line);
}

interface LinesOfStay {
  readonly stays: LineOf<"stays.csv">[];
  readonly moves: LineOf<"moves.csv">[];
  readonly catheters: LineOf<"catheters.csv">[];
  readonly reviews: PlacedReview[];
  readonly cultures: Extract<PatientLine, { file: CultureFile }>[];
}

/** The lines by stay, stays and lines in the order of time. */
function byStay(lines: readonly PatientLine[], timeline: PatientTimeline): LinesOfStay[] {
  const groups = new Map<string, LinesOfStay>();
  for (const line of lines) {
    const group = groups.get(line.values.stay) ?? { stays: [], moves: [], catheters: [], reviews: [], cultures: [] };
    groups.set(line.values.stay, group);
    if (line.file === "stays.csv") group.stays.push(line);
    else if (line.file === "moves.csv") group.moves.push(line);
    else if (line.file === "catheters.csv") group.catheters.push(line);
    else if (line.file === "reviews.csv") group.reviews.push(line);
    else group.cultures.push(line);
  }
  for (const { moves, catheters, reviews } of groups.values()) {
    moves.sort((a, b) => a.values.from - b.values.from || endOf(a) - endOf(b));
    catheters.sort((a, b) => (a.values.inserted ?? 0) - (b.values.inserted ?? 0));
    reviews.sort((a, b) => a.values.day - b.values.day);
  }
  const starts = new Map([...groups].map(([number, group]) => [group, startOf(group, stayByNumber(timeline, number))]));
  return [...groups.values()].sort((a, b) => (starts.get(a) ?? 0) - (starts.get(b) ?? 0));
}

function endOf(line: LineOf<"moves.csv">): number {
  return line.values.to ?? Number.POSITIVE_INFINITY;
}

function startOf({ stays, moves }: LinesOfStay, recorded: Stay | undefined): number {
  const said = [...stays.flatMap((s) => s.values.admitted ?? []), ...moves.map((m) => m.values.from)];
  return Math.min(...said, ...(recorded ? [recorded.admittedAt] : []));
}

/** A new stay comes before its moves; one that only moves describe comes with the first of them. */
function applyToNew(plan: Plan, group: LinesOfStay): void {
  const before = plan.timeline;
  const firstMove: Instant | null = group.moves[0]?.values.from ?? null;
  for (const line of group.stays) applyStayLine(plan, line, { firstMove });
  if (group.stays.length > 0 && plan.timeline === before) refuseRest(plan, group);
  else applyContents(plan, group);
}

/** A recorded stay is corrected after its moves were: what was open before may end with it. */
function applyToKnown(plan: Plan, group: LinesOfStay, known: Stay): void {
  const before = plan.timeline;
  const [first, ...more] = group.stays;
  if (first) plan.timeline = withStay(before, withRoom(known, first.values));
  applyContents(plan, group);
  for (const line of [...(first ? [first] : []), ...more]) {
    applyStayLine(plan, line, { firstMove: null, recorded: line === first ? known : undefined });
    if (line !== first || plan.outcomes.get(line)?.state !== "refused") continue;
    plan.timeline = before;
    refuseRest(plan, group);
  }
}

function applyStayLine(plan: Plan, line: LineOf<"stays.csv">, given: Parameters<typeof planStay>[2]): void {
  applyLine(plan, line, () => planStay(plan, line, given));
  const stay = stayByNumber(plan.timeline, line.values.stay);
  const { state } = plan.outcomes.get(line) ?? {};
  if (stay && (state === "accepted" || state === "marked")) made(plan, `stay ${stay.id}`, line);
}

function applyContents(plan: Plan, { moves, catheters }: LinesOfStay): void {
  for (const [i, line] of moves.entries()) applyMove(plan, line, moves[i + 1]?.values.from ?? null);
  for (const line of catheters)
    applyLine(plan, line, () => {
      const planned = planCatheter(plan, line);
      if (planned !== "unchanged" && "catheterId" in planned) made(plan, `catheter ${planned.catheterId}`, line);
      return planned;
    });
}

/** Reviews come last, when it is known how long the stay and its catheters last. */
function applyReviews(plan: Plan, { reviews }: LinesOfStay): void {
  for (const line of reviews) if (!plan.outcomes.has(line)) applyLine(plan, line, () => planReview(plan, line));
}

/** The line of the stay was refused, so what else is said of it has nothing to belong to. */
function refuseRest(plan: Plan, { stays, moves, catheters, reviews, cultures }: LinesOfStay): void {
  const fault = { code: "stay-refused", column: "stay", detail: "The line of its stay was refused." } as const;
  const other = stays[0] ? placeOf(stays[0]) : "stays.csv";
  for (const line of [...moves, ...catheters, ...reviews, ...cultures]) refuseLine(plan, line, [{ ...fault, other }]);
}

function applyMove(plan: Plan, line: LineOf<"moves.csv">, next: Instant | null): void {
  applyLine(plan, line, () => {
    const planned = planMove(plan, line, next);
    if (planned === "unchanged" || !("wardStayId" in planned)) return planned;
    made(plan, `ward stay ${planned.wardStayId}`, line);
    if (planned.isNewStay) made(plan, `stay ${planned.stayId}`, line);
    return planned;
  });
}
