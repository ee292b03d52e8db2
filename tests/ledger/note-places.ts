import type { HospitalRecord } from "./read-record.ts";

/**
 * Standing notes about standing catheters that say that a catheter was in place when by the record it was not. Shares
 * nothing with the checks of the record's own: a catheter was in place from its insertion, when that is known, and
 * until its removal, or the last time at which it is known to have been in; and never outside the stay.
 */
export function notesOutOfPlace({ stays, catheters, notes }: HospitalRecord): string[] {
  const wrong: string[] = [];
  for (const note of notes) {
    const catheter = catheters.find(({ id }) => id === note.catheterId);
    const stay = stays.find(({ id }) => id === catheter?.stayId);
    if (!catheter || !stay) throw new Error(`note ${note.id} is about nothing`);
    if (note.voidKey !== 0 || catheter.voidKey !== 0 || stay.voidKey !== 0) continue;
    const tooEarly = [stay.admittedAt, catheter.insertedAt].some((from) => from !== null && note.at < from);
    const ends = [stay.dischargedAt, catheter.removedAt, catheter.removedAfterAt];
    const tooLate = ends.some((end) => end !== null && note.at > end);
    if (tooEarly || tooLate) wrong.push(`note ${note.id} of catheter ${catheter.id} at ${note.at}`);
  }
  return wrong;
}
