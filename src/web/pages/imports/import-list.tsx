import { type ReactNode, useState } from "react";
import { listImports } from "../../../../shared/api/imports.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { importsText } from "../../texts/imports.ts";
import { ImportState } from "./import-state.tsx";

type Listed = OutputOf<typeof listImports>;

/** The imports so far, newest first, a page at a time. */
export function ImportList(): ReactNode {
  const [before, setBefore] = useState<number | null>(null);
  const asked = useAnswer(listImports, before === null ? {} : { before });
  return (
    <section aria-labelledby="imports-so-far">
      <h2 id="imports-so-far">{importsText("listTitle")}</h2>
      <ShowAnswer asked={asked} what={importsText("what")}>
        {({ imports, next }) => (
          <>
            {imports.length === 0 ? <p className="notice">{importsText("none")}</p> : <Table imports={imports} />}
            <p className="row on-screen">
              {next !== null && (
                <button type="button" onClick={() => setBefore(next)}>
                  {importsText("older")}
                </button>
              )}
              {before !== null && (
                <button type="button" onClick={() => setBefore(null)}>
                  {importsText("newest")}
                </button>
              )}
            </p>
          </>
        )}
      </ShowAnswer>
    </section>
  );
}

function Table({ imports }: { imports: Listed["imports"] }): ReactNode {
  const { time } = useSession();
  return (
    <div className="wide">
      <table className="ledger">
        <thead>
          <tr>
            {(["number", "when", "who", "from", "state", "lines"] as const).map((name) => (
              <th scope="col" key={name}>
                {importsText(name)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {imports.map((one) => (
            <tr key={one.importId}>
              <th scope="row">
                <PageLink to={`/imports/${one.importId}`}>{importsText("open", { number: one.importId })}</PageLink>
              </th>
              <td>{time.short(one.startedAt)}</td>
              <td>
                <Said>{one.startedByName}</Said>
              </td>
              <td>
                <Said>{one.sourceName ?? importsText("sourceNone")}</Said>
              </td>
              <td>
                <ImportState state={one.state} />
              </td>
              <td>{linesOf(one)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** How many lines were stored, and how many need somebody. */
function linesOf({ state, counts }: Listed["imports"][number]): string {
  const { accepted, marked, refused } = counts;
  const stored = accepted + marked;
  return [
    ...(stored === 0 ? [] : [importsText("stored", { count: stored })]),
    ...(refused === 0 ? [] : [importsText(state === "applied" ? "toRepair" : "refused", { count: refused })]),
  ].join(", ");
}
