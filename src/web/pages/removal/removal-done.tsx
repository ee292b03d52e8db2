import type { ReactNode } from "react";
import type { Catheter } from "../../parts/patient/patient-record.ts";
import { RecordDone } from "../../parts/patient/record-done.tsx";
import { removalText } from "../../texts/removal.ts";
import { draftedOut, type RemovalDraft, removalRecordOf } from "./removal-draft.ts";
import { removalRows } from "./removal-rows.ts";

/** What was recorded of a removal, for the chart. */
export function RemovalDone(props: {
  draft: RemovalDraft;
  catheter: Catheter;
  patientId: number;
  wardId: number | null;
}): ReactNode {
  const { draft, catheter, patientId, wardId } = props;
  return (
    <RecordDone
      title={removalText("doneTitle")}
      lead={removalText("doneLead")}
      rows={removalRows(draftedOut(draft), removalRecordOf(draft))}
      catheterId={catheter.catheterId}
      {...{ patientId, wardId }}
    />
  );
}
