import type { ReactNode } from "react";
import type { readMonthSignatures } from "../../../../shared/api/month-figures.ts";
import { auditActions } from "../../../../shared/audit-words.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import type { ChangedEntry } from "../../../../shared/signed-changes.ts";
import { FigureTable } from "../../parts/figure-changes.tsx";
import { OpensOnce } from "../../parts/opens-once.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import { type NameOf, WithNames } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { signingText as text } from "../../texts/signing.ts";

type Change = OutputOf<typeof readMonthSignatures>["changes"][number];

/** What was recorded after a month was signed and changed its figures; what a later signature took in is opened. */
export function MonthChanges({ changes }: { changes: readonly Change[] }): ReactNode {
  const [open, settled] = [changes.filter(({ isOpen }) => isOpen), changes.filter(({ isOpen }) => !isOpen)];
  if (changes.length === 0) return null;
  return (
    <section aria-labelledby="changes-after-signing">
      <h2 id="changes-after-signing">{text("changes")}</h2>
      <WithNames what={text("changesWhat")}>
        {(nameOf) => (
          <>
            {open.length > 0 && <ChangeTable changes={open} nameOf={nameOf} caption={text("changesOpen")} />}
            {settled.length > 0 && (
              <OpensOnce summary={text("changesSettled", { count: settled.length })}>
                <ChangeTable changes={settled} nameOf={nameOf} caption={text("changesSettledCaption")} />
              </OpensOnce>
            )}
          </>
        )}
      </WithNames>
    </section>
  );
}

function ChangeTable(props: { changes: readonly Change[]; nameOf: NameOf; caption: string }): ReactNode {
  const { changes, nameOf, caption } = props;
  const { time } = useSession();
  return (
    <table className="ledger inner">
      <caption>{caption}</caption>
      <thead>
        <tr>
          {(["what", "who", "when", "figures"] as const).map((column) => (
            <th scope="col" key={column}>
              {text(`${column}Changed`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {changes.map((change, at) => (
          // Rows are never put in another order while they are shown.
          // biome-ignore lint/suspicious/noArrayIndexKey: two acts of one person can have one time
          <tr key={at}>
            <th scope="row">
              <Entry {...change} />
            </th>
            <td>
              <Said>{nameOf(change.by)}</Said>
            </td>
            <td>{time.short(change.at)}</td>
            <td>
              <Figures figures={change.figures} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What was done, with the way to the entry. */
function Entry({ entry, action }: Change): ReactNode {
  const words = <Said>{auditActions[action]}</Said>;
  const to = entry && addressOf(entry);
  return to === null ? words : <PageLink to={to}>{words}</PageLink>;
}

function addressOf({ kind, id, patientId }: ChangedEntry): string | null {
  if (kind === "catheter") return patientId === null ? null : `/patients/${patientId}/catheters/${id}`;
  const folders = { patient: "/patients", case: "/cases", import: "/imports", ward: "/settings/wards" } as const;
  return `${folders[kind]}/${id}`;
}

/** The counts that changed; all other figures are opened. */
function Figures({ figures }: Pick<Change, "figures">): ReactNode {
  const counts = figures.filter(({ figure, ward }) => figure !== null && isCount.has(figure) && ward !== null);
  if (figures.length === 0) return text("notCompared");
  return (
    <>
      {counts.map(({ ward, what, before, after }) => (
        <div key={`${ward} ${what}`}>
          <Said>{text("fromTo", { ward: ward ?? "", what, before: before ?? "", after: after ?? "" })}</Said>
        </div>
      ))}
      <OpensOnce summary={text("figuresAll", { count: figures.length })}>
        <FigureTable figures={figures} caption={text("figuresChanged")} />
      </OpensOnce>
    </>
  );
}

const isCount: ReadonlySet<string> = new Set(["patient_days", "catheter_days", "infections"]);
