import type { ReactNode } from "react";
import type { PolicyItem } from "../../../../shared/policy.ts";
import { RecordDone } from "../../parts/patient/record-done.tsx";
import { careText } from "../../texts/care.ts";
import { itemStateText } from "../../texts/record-labels.ts";
import type { CareDraft } from "./care-form.tsx";

/** What was recorded of a care check, for the chart. */
export function CareDone(props: {
  draft: CareDraft;
  bundle: readonly PolicyItem[];
  catheterId: number;
  patientId: number;
  wardId: number;
}): ReactNode {
  const { draft, bundle, catheterId, patientId, wardId } = props;
  const items = bundle.map(({ code, label }) => {
    const state = draft.items[code];
    return { label, value: state ? itemStateText(state) : null };
  });
  const rows = [
    { label: careText("at"), value: draft.at.replace("T", " ") },
    ...items,
    { label: careText("remark"), value: draft.remark.trim() || null },
  ];
  return (
    <RecordDone
      title={careText("doneTitle")}
      lead={careText("doneLead")}
      {...{ rows, patientId, catheterId, wardId }}
    />
  );
}
