import type { RemovalRecord } from "../../../../shared/records.ts";
import type { RecordRow } from "../../parts/patient/record-table.tsx";
import { insertionText } from "../../texts/insertion.ts";
import { removalReasonText } from "../../texts/record-labels.ts";
import { removalText } from "../../texts/removal.ts";

/** The complete record of a removal; `out` says when, in words. */
export function removalRows(out: string, record: RemovalRecord): RecordRow[] {
  const { balloonWithdrawnMl, catheterIntact, reason, remark } = record;
  return [
    { label: removalText("out"), value: out },
    {
      label: removalText("balloon"),
      value: balloonWithdrawnMl === undefined ? null : `${balloonWithdrawnMl} ${insertionText("unitMl")}`,
    },
    {
      label: removalText("intact"),
      value: catheterIntact === undefined ? null : insertionText(catheterIntact ? "yes" : "no"),
    },
    { label: removalText("reason"), value: reason ? removalReasonText(reason) : null },
    { label: removalText("remark"), value: remark ?? null },
  ];
}
