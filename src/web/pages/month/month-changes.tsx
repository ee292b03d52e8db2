import type { ReactNode } from "react";
import type { readMonthSignatures } from "../../../../shared/api/month-figures.ts";
import { auditActions } from "../../../../shared/audit-words.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import type { ChangedEntry, FigureChange } from "../../../../shared/signed-changes.ts";
import { FigureValue } from "../../parts/figure-changes.tsx";
import { OpensOnce } from "../../parts/opens-once.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import { type NameOf, WithNames } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { fieldText } from "../../texts/fields.ts";
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
    <table className="ledger inner changes-made">
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
        {changes.map((change) => (
          <tr key={change.changeId}>
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
  const isCount = ({ figure, ward }: FigureChange) => figure !== null && counts.has(figure) && ward !== null;
  const [first, more] = [figures.filter(isCount), figures.filter((one) => !isCount(one))];
  if (figures.length === 0) return text("notCompared");
  return (
    <>
      <Lines figures={first} />
      {more.length > 0 && (
        <OpensOnce summary={text("figuresMore", { count: more.length })}>
          <Lines figures={more} />
        </OpensOnce>
      )}
    </>
  );
}

const counts: ReadonlySet<string> = new Set(["patient_days", "catheter_days", "infections"]);

function Lines({ figures }: Pick<Change, "figures">): ReactNode {
  return (
    <ul className="plain-list">
      {figures.map((one) => (
        <li key={JSON.stringify(one)}>
          <Said>{one.ward ?? fieldText("allUnits")}</Said>: <Said>{one.what}</Said>{" "}
          <FigureValue value={one.before} figure={one.figure} /> → <FigureValue value={one.after} figure={one.figure} />
        </li>
      ))}
    </ul>
  );
}
