import type { NoteChanges } from "../../src/domain/timeline/write-note.ts";
import { correctNote } from "../../src/usecases/record/correct-note.ts";
import { voidNote } from "../../src/usecases/record/void-note.ts";
import { type WriteNote, writeNote } from "../../src/usecases/record/write-note.ts";
import { drawInPlace, timeOfUse } from "./catheter-edits.ts";
import { drawVersion } from "./correction-edits.ts";
import type { NoteRecord } from "./read-record.ts";
import { type Draw, type Scene, standingCatheters, timeBetween } from "./scene.ts";

const reason = "written down for another one";

/** What a note of each kind says; now and then what the policy does not know. */
const said: Readonly<Record<WriteNote["kind"], (scene: Scene) => Omit<NoteChanges, "at">>> = {
  confirmation: () => ({}),
  review: ({ chance }) => {
    const outcome = chance.pick(["keep", "keep", "remove", "ask"] as const);
    const why = chance.percent(95) ? chance.pick(["perioperative", "incontinence"]) : null;
    return { outcome, indication: outcome === "keep" ? why : null };
  },
  "care-check": ({ chance }) => {
    const other = chance.percent(95) ? "secured" : "polished";
    return { items: { "closed-system": chance.pick(["kept", "broken"] as const), [other]: "kept" } };
  },
  "urine-output": ({ chance }) => ({ amountMl: chance.percent(95) ? chance.below(2000) : 12_000 }),
};

const drawNote = (scene: Scene, kind: WriteNote["kind"]): ReturnType<Draw> => {
  const found = drawInPlace(scene);
  if (!found) return null;
  const input = { catheterId: found.catheter.id, kind, at: timeOfUse(scene, found), ...said[kind](scene) };
  return { said: `note ${JSON.stringify(input)}`, run: (act) => writeNote(act, input) };
};

/** Somebody saw a catheter in place. */
export const drawConfirmation: Draw = (scene) => drawNote(scene, "confirmation");
/** Is it still needed? */
export const drawReview: Draw = (scene) => drawNote(scene, "review");
export const drawCareCheck: Draw = (scene) => drawNote(scene, "care-check");
export const drawUrineOutput: Draw = (scene) => drawNote(scene, "urine-output");

/** A correction of a note's time, or of what it says. */
export const drawNoteCorrected: Draw = (scene) => {
  const note = scene.chance.maybe(standingNotes(scene));
  if (!note) return null;
  const changes = scene.chance.percent(60) ? { at: timeBetween(scene, scene.start) } : said[note.kind](scene);
  const input = { noteId: note.id, changes, confirm: [], reason, ...drawVersion(scene, note) };
  return { said: `correct ${JSON.stringify(input)}`, run: (act) => correctNote(act, input) };
};

/** Voids a note. */
export const drawNoteVoided: Draw = (scene) => {
  const note = scene.chance.maybe(standingNotes(scene));
  if (!note) return null;
  const input = { noteId: note.id, reason, ...drawVersion(scene, note) };
  return { said: `void ${JSON.stringify(input)}`, run: (act) => voidNote(act, input) };
};

/** The standing notes about standing catheters that an edit may be about. */
function standingNotes(scene: Scene): NoteRecord[] {
  const ids = new Set(standingCatheters(scene).map(({ catheter }) => catheter.id));
  return scene.record.notes.filter((note) => note.voidKey === 0 && ids.has(note.catheterId));
}
