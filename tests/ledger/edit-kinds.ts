import * as catheters from "./catheter-edits.ts";
import * as corrections from "./correction-edits.ts";
import * as facilities from "./facility-edits.ts";
import * as notes from "./note-edits.ts";
import type { Draw, Edit, Scene } from "./scene.ts";
import * as stays from "./stay-edits.ts";

/** A kind of edit, and how often it is drawn against the others. */
export interface EditKind {
  readonly name: string;
  readonly weight: number;
  readonly draw: Draw;
}

/** An edit that knows its kind. */
export interface DrawnEdit extends Edit {
  readonly kind: string;
}

const admission: EditKind = { name: "admission", weight: 14, draw: stays.drawAdmission };
const wardSetting: EditKind = { name: "ward setting", weight: 3, draw: facilities.drawWardSetting };

/** Edits about a patient. */
const patientKinds: readonly EditKind[] = [
  admission,
  { name: "move", weight: 10, draw: stays.drawMove },
  { name: "absence", weight: 9, draw: stays.drawAbsence },
  { name: "discharge", weight: 6, draw: stays.drawDischarge },
  { name: "discharge cancelled", weight: 3, draw: stays.drawDischargeCancelled },
  { name: "move cancelled", weight: 3, draw: stays.drawMoveCancelled },
  { name: "insertion", weight: 9, draw: catheters.drawInsertion },
  { name: "found in place", weight: 3, draw: catheters.drawFoundInPlace },
  { name: "exchange", weight: 5, draw: catheters.drawExchange },
  { name: "removal", weight: 4, draw: catheters.drawRemoval },
  { name: "removal between", weight: 3, draw: catheters.drawRemovalBetween },
  { name: "confirmation", weight: 2, draw: notes.drawConfirmation },
  { name: "review", weight: 3, draw: notes.drawReview },
  { name: "care check", weight: 2, draw: notes.drawCareCheck },
  { name: "urine output", weight: 2, draw: notes.drawUrineOutput },
  { name: "note corrected", weight: 3, draw: notes.drawNoteCorrected },
  { name: "note voided", weight: 2, draw: notes.drawNoteVoided },
  { name: "stay corrected", weight: 5, draw: corrections.drawStayCorrected },
  { name: "ward stay corrected", weight: 7, draw: corrections.drawWardStayCorrected },
  { name: "catheter corrected", weight: 6, draw: corrections.drawCatheterCorrected },
  { name: "stay voided", weight: 1, draw: stays.drawStayVoided },
  { name: "ward stay voided", weight: 2, draw: stays.drawWardStayVoided },
  { name: "catheter voided", weight: 2, draw: catheters.drawCatheterVoided },
  { name: "merge", weight: 5, draw: facilities.drawMerge },
  { name: "unmerge", weight: 4, draw: facilities.drawUnmerge },
];

/** All kinds. */
export const kinds: readonly EditKind[] = [
  ...patientKinds,
  wardSetting,
  { name: "ward merge", weight: 2, draw: facilities.drawWardMerge },
  { name: "census", weight: 1, draw: facilities.drawCensus },
];

/** More than a record ever needs to have something for one of the kinds. */
const attempts = 12;

/** An edit that the scene allows: of its patient when it has one. The first two are admissions. */
export function drawEdit(scene: Scene): DrawnEdit {
  const { chance, focus, number } = scene;
  const urn = (focus === null ? kinds : patientKinds).flatMap((kind) => Array<EditKind>(kind.weight).fill(kind));
  for (let attempt = 0; attempt < attempts; attempt++) {
    // Somebody has to be there first.
    const { name, draw } = number < 2 ? admission : chance.pick(urn);
    const edit = draw(scene);
    if (edit) return { ...edit, kind: name };
  }
  return drawRule(scene);
}

/** A change of a counting rule, which touches everybody. */
export function drawRule(scene: Scene): DrawnEdit {
  const edit = wardSetting.draw(scene);
  if (!edit) throw new Error("the facility has no wards");
  return { ...edit, kind: wardSetting.name };
}
