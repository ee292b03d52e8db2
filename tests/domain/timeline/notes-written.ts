import type { CatheterNote } from "../../../src/domain/timeline/note.ts";
import { type NoteText, newNote } from "../../../src/domain/timeline/write-note.ts";

/** A note about catheter 4 as it is first written. */
export function noteOf(text: NoteText): CatheterNote {
  return newNote({ noteId: 9, catheterId: 4, writtenAt: 40, writtenBy: 7 }, text);
}

/** A fault as its code and the field it is about. */
export function placeOf({ code, pointer }: { code: string; pointer: string }): string {
  return `${code} ${pointer}`;
}
