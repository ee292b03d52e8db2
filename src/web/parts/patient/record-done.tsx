import { type ReactNode, useEffect, useRef } from "react";
import { insertionText } from "../../texts/insertion.ts";
import { PageLink } from "../page-link.tsx";
import { type RecordRow, RecordTable } from "./record-table.tsx";

/** What was recorded of a catheter, complete, for the chart, and where to go from here. The heading gets the focus. */
export function RecordDone(props: {
  title: string;
  lead: string;
  rows: readonly RecordRow[];
  patientId: number;
  catheterId: number;
  /** The ward whose round the person came from; null when the patient is on none. */
  wardId: number | null;
}): ReactNode {
  const { title, lead, rows, patientId, catheterId, wardId } = props;
  const place = useRef<HTMLHeadingElement>(null);
  useEffect(() => place.current?.focus(), []);
  return (
    <>
      <h2 ref={place} tabIndex={-1}>
        {title}
      </h2>
      <p className="notice done">{lead}</p>
      <RecordTable rows={rows} />
      <div className="row on-screen">
        {wardId !== null && (
          <PageLink to={`/wards/${wardId}/round`} className="button first">
            {insertionText("toRound")}
          </PageLink>
        )}
        <PageLink to={`/patients/${patientId}/catheters/${catheterId}`} className="button">
          {insertionText("toStory")}
        </PageLink>
        <button type="button" onClick={() => print()}>
          {insertionText("print")}
        </button>
      </div>
    </>
  );
}
