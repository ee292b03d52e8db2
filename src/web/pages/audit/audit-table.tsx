import type { ReactNode } from "react";
import type { searchAudit } from "../../../../shared/api/audit.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { actionText, auditText } from "../../texts/audit.ts";

type AuditPageOf = OutputOf<typeof searchAudit>;

/** Entries of the audit trail, newest first. Patients stand as the numbers that they have here. */
export function AuditTable({ page, older }: { page: AuditPageOf; older: (after: string) => void }): ReactNode {
  const { time } = useSession();
  const { entries, next } = page;
  if (entries.length === 0) return <p className="notice">{auditText("none")}</p>;
  return (
    <>
      <div className="wide">
        <table className="ledger">
          <thead>
            <tr>
              {(["when", "person", "action", "patients"] as const).map((name) => (
                <th scope="col" key={name}>
                  {auditText(name)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {entries.map(({ auditId, at, personName, action, patientIds, details }) => (
              <tr key={auditId}>
                <th scope="row">{time.short(at)}</th>
                <td>
                  <Said>{personName}</Said>
                </td>
                <td>
                  {actionText(action)}
                  <Details details={details} />
                </td>
                <td>
                  {patientIds.length > 3 ? auditText("count", { count: patientIds.length }) : patientIds.join(", ")}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {next !== null && (
        <p className="on-screen">
          <button type="button" onClick={() => older(next)}>
            {auditText("more")}
          </button>
        </p>
      )}
    </>
  );
}

function Details({ details }: { details: Readonly<Record<string, unknown>> }): ReactNode {
  const said = Object.entries(details).map(([name, value]) => `${name} ${String(value)}`);
  if (said.length === 0) return null;
  return (
    <span className="small">
      {" "}
      <Said>({said.join(", ")})</Said>
    </span>
  );
}
