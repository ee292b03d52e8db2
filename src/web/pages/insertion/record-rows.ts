import type { PolicyBody } from "../../../../shared/policy.ts";
import type { InsertionRecord } from "../../../../shared/records.ts";
import type { CatheterKind } from "../../../../shared/vocabulary.ts";
import type { RecordRow } from "../../parts/patient/record-table.tsx";
import { indicationLabel } from "../../texts/indications.ts";
import { insertionText } from "../../texts/insertion.ts";
import { appearanceText, fieldLabel, inserterText, placeText, securementText } from "../../texts/record-labels.ts";
import { kindText } from "../../texts/words.ts";

/** What a catheter's insertion says, as far as it is known. */
export interface Inserted {
  readonly kind: CatheterKind;
  /** In words, on the facility's clocks. */
  readonly insertedAt: string;
  readonly indication: string | null;
  readonly sizeFr: number | null;
  readonly balloonMl: number | null;
  readonly record: InsertionRecord;
}

/** The complete record of an insertion in bedside order. */
export function insertionRows(inserted: Inserted, policy: PolicyBody | null): RecordRow[] {
  const { record } = inserted;
  const amount = (value: number | null | undefined, unit: string) => (value == null ? null : `${value} ${unit}`);
  const rows: [string, string | null][] = [
    [insertionText("insertedAt"), inserted.insertedAt],
    [insertionText("kind"), kindText(inserted.kind)],
    [insertionText("indication"), inserted.indication && indicationLabel(inserted.indication, policy)],
    ...yesNoRows(record, ["orderChecked", "twoIdentifiersChecked", "handHygiene"]),
    ...yesNoRows(record, ["packageIntactInDate", "perinealCareDone", "sterileTechniqueHeld"]),
    [insertionText("attempts"), record.attempts === undefined ? null : String(record.attempts)],
    [insertionText("size"), amount(inserted.sizeFr, insertionText("unitFr"))],
    [insertionText("balloon"), amount(inserted.balloonMl, insertionText("unitMl"))],
    [insertionText("urine"), record.urineReturnedMl === undefined ? null : String(record.urineReturnedMl)],
    [insertionText("appearance"), record.urineAppearance ? appearanceText(record.urineAppearance) : null],
    [insertionText("securement"), record.securement ? securementText(record.securement) : null],
    ...yesNoRows(record, ["bagBelowBladder", "bagOffFloor"]),
    [insertionText("insertedBy"), record.insertedBy ? inserterText(record.insertedBy) : null],
    [insertionText("insertedIn"), record.insertedIn ? placeText(record.insertedIn) : null],
    [insertionText("response"), record.patientResponse ?? null],
    ...yesNoRows(record, ["teachingGiven"]),
  ];
  return rows.map(([label, value]) => ({ label, value }));
}

type YesNoKey =
  | ("orderChecked" | "twoIdentifiersChecked" | "handHygiene" | "packageIntactInDate" | "perinealCareDone")
  | ("sterileTechniqueHeld" | "bagBelowBladder" | "bagOffFloor" | "teachingGiven");

function yesNoRows(record: InsertionRecord, keys: readonly YesNoKey[]): [string, string | null][] {
  return keys.map((key) => {
    const value = record[key];
    return [fieldLabel(key), value === undefined ? null : insertionText(value ? "yes" : "no")];
  });
}
