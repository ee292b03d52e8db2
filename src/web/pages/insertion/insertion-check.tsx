import type { ReactNode } from "react";
import type { PolicyBody } from "../../../../shared/policy.ts";
import { RecordDone } from "../../parts/patient/record-done.tsx";
import { type RecordRow, RecordTable } from "../../parts/patient/record-table.tsx";
import { insertionText } from "../../texts/insertion.ts";
import { type InsertionDraft, insertionInput } from "./insertion-draft.ts";
import { insertionRows } from "./record-rows.ts";

/** The whole record before it is sent, with what is not in it named. */
export function InsertionCheck({ draft, policy }: { draft: InsertionDraft; policy: PolicyBody }): ReactNode {
  return <RecordTable rows={rowsOf(draft, policy)} />;
}

function rowsOf(draft: InsertionDraft, policy: PolicyBody): RecordRow[] {
  const { record = {}, sizeFr = null, balloonMl = null, indication = null } = insertionInput(draft, 0);
  const insertedAt = draft.insertedAt.replace("T", " ");
  return insertionRows({ kind: draft.kind, insertedAt, indication, sizeFr, balloonMl, record }, policy);
}

/** What was recorded, complete, for the chart. */
export function InsertionDone(props: {
  draft: InsertionDraft;
  policy: PolicyBody;
  wardId: number;
  patientId: number;
  done: { readonly catheterId: number };
}): ReactNode {
  const { draft, policy, wardId, patientId, done } = props;
  return (
    <RecordDone
      title={insertionText("doneTitle")}
      lead={insertionText("doneLead")}
      rows={rowsOf(draft, policy)}
      catheterId={done.catheterId}
      {...{ patientId, wardId }}
    />
  );
}
