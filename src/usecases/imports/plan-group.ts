import type { PatientLine } from "../../domain/intake/intake-line.ts";
import type { Outcome } from "../../domain/intake/outcome.ts";
import type { CareRules, NoteChange } from "../../domain/intake/plan.ts";
import type { CultureChanges } from "../../domain/intake/plan-cultures.ts";
import { planPatient } from "../../domain/intake/plan-patient.ts";
import type { CatheterNote } from "../../domain/timeline/note.ts";
import type { PatientTimeline } from "../../domain/timeline/timeline.ts";
import { notesOf } from "../../store/notes.ts";
import { type PatientRow, patientsByIdentifier } from "../../store/patients.ts";
import type { TimelineChange } from "../../store/save-timelines.ts";
import { ownersOfStays } from "../../store/stays.ts";
import type { Read } from "../../store/store.ts";
import { loadTimelines } from "../../store/timelines.ts";
import { groupedBy } from "../grouped-by.ts";
import { PatientCultures } from "./patient-cultures.ts";

/** The lines about one patient, by the identifier of the record that they are made for; null: of no known patient. */
export interface PatientGroup {
  readonly identifier: string | null;
  readonly lines: readonly PatientLine[];
  /** Lines of the same folder that were stored before. */
  readonly seen: readonly PatientLine[];
}

export interface PlannedGroups {
  /** The surviving patients of the groups that are recorded already. */
  readonly survivorIds: readonly number[];
  readonly changes: readonly TimelineChange[];
  readonly notes: readonly NoteChange[];
  readonly cultures: CultureChanges;
  readonly outcomes: ReadonlyMap<PatientLine, Outcome>;
}

/**
 * What lines about some patients make of what is recorded, as the snapshot or the locked rows say. `newId` gives the
 * ids of new entries, and of a patient who is not recorded yet: nobody else's.
 */
export async function planGroups(
  read: Read,
  facilityId: number,
  groups: readonly PatientGroup[],
  given: { wardIds: ReadonlyMap<string, number>; newId: () => number; care: CareRules },
): Promise<PlannedGroups> {
  const identifiers = groups.flatMap((group) => group.identifier ?? []);
  const patients = await patientsByIdentifier(read, facilityId, identifiers);
  const survivorIds = [...new Set([...patients.values()].map((patient) => patient.survivorId))];
  const before = await loadTimelines(read, survivorIds);
  const stays = [...new Set(groups.flatMap((group) => group.lines.map((line) => line.values.stay)))];
  const owners = await ownersOfStays(read, facilityId, stays);
  const now = new Map<number, PatientTimeline>(before);
  const reviews = await reviewsOf(read, groups, before);
  const survivorOf = ({ identifier }: PatientGroup) => patients.get(identifier ?? "")?.survivorId;
  const spokenOf = groups.map((group) => ({ survivorId: survivorOf(group), lines: [...group.lines, ...group.seen] }));
  const cultures = await PatientCultures.load(read, spokenOf);
  const outcomes = new Map<PatientLine, Outcome>();
  const notes: NoteChange[] = [];
  for (const group of groups) {
    const patient = patientOf(group, patients, given.newId);
    const timeline = now.get(patient.survivorId) ?? { patientId: patient.survivorId, stays: [] };
    const mine = group.lines.filter((line) => ownerFits(line, { owners, patient, outcomes }));
    const known = reviews.get(patient.survivorId) ?? [];
    const start = { timeline, patientId: patient.id, seen: group.seen, reviews: known };
    const planned = planPatient({ ...start, cultures: cultures.of(patient.survivorId) }, mine, given);
    cultures.become(patient.survivorId, planned.cultures);
    now.set(patient.survivorId, planned.timeline);
    notes.push(...planned.notes);
    for (const [line, outcome] of planned.outcomes) outcomes.set(line, outcome);
  }
  const changes = [...now].map(([patientId, after]) => ({
    before: before.get(patientId) ?? { patientId, stays: [] },
    after,
  }));
  return { survivorIds, changes, notes, cultures: cultures.changes(), outcomes };
}

/** The reviews that are recorded of patients about whose reviews lines speak, by surviving patient. */
async function reviewsOf(
  read: Read,
  groups: readonly PatientGroup[],
  timelines: ReadonlyMap<number, PatientTimeline>,
): Promise<ReadonlyMap<number, CatheterNote[]>> {
  const stays = new Set(
    groups.flatMap(({ lines }) => lines.flatMap((line) => (line.file === "reviews.csv" ? [line.values.stay] : []))),
  );
  const owners = new Map<number, number>();
  for (const [patientId, timeline] of timelines)
    for (const stay of timeline.stays)
      if (stays.has(stay.number)) for (const catheter of stay.catheters) owners.set(catheter.id, patientId);
  const notes = await notesOf(read, [...owners.keys()], { reviewsOnly: true });
  return groupedBy(notes, ({ catheterId }) => owners.get(catheterId) ?? 0);
}

function patientOf(
  { identifier }: PatientGroup,
  patients: ReadonlyMap<string, PatientRow>,
  newId: () => number,
): { id: number; survivorId: number } {
  const known = identifier === null ? undefined : patients.get(identifier);
  if (known) return known;
  const id = newId();
  return { id, survivorId: id };
}

/** Refuses a line whose stay is recorded for somebody else. */
function ownerFits(
  line: PatientLine,
  given: {
    owners: ReadonlyMap<string, { survivorId: number }>;
    patient: { survivorId: number };
    outcomes: Map<PatientLine, Outcome>;
  },
): boolean {
  const owner = given.owners.get(line.values.stay);
  if (!owner || owner.survivorId === given.patient.survivorId) return true;
  const detail = "This stay is recorded for another patient.";
  given.outcomes.set(line, {
    state: "refused",
    faults: [{ code: "stay-of-another-patient", column: "stay", detail, other: `patient ${owner.survivorId}` }],
  });
  return false;
}
