import { revise } from "../../domain/timeline/timeline.ts";
import type { Act } from "../act.ts";
import { changeNote, type NoteChange } from "./correct-note.ts";

/** Voids a note that was recorded in error; it stays readable and counts nowhere. Refuses `stale-version`. */
export function voidNote(act: Act, input: NoteChange): Promise<{ noteId: number; version: number }> {
  return changeNote(act, input, {
    action: "void-note",
    decide: async (_tx, old) => revise(old, { voidReason: input.reason }),
  });
}
