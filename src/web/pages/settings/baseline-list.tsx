import type { ReactNode } from "react";
import { baselineColumns, baselineKinds } from "../../../../shared/baseline-words.ts";
import { Said } from "../../parts/said.tsx";
import { baselinesText as text } from "../../texts/baselines.ts";
import type { Baselines } from "./comparison-list.tsx";

type Baseline = Baselines[number];
const facts = ["year", "population", "definition", "edition", "source"] as const;

/** The baselines, each with what a reader must know of it, and its rows as they were given. */
export function BaselineList({ known }: { known: Baselines }): ReactNode {
  return (
    <section aria-labelledby="baselines">
      <h2 id="baselines">{text("list")}</h2>
      {known.length === 0 && <p>{text("noBaselines")}</p>}
      {known.map((baseline) => (
        <article key={baseline.baselineId} className="card" aria-labelledby={`baseline-${baseline.baselineId}`}>
          <h3 id={`baseline-${baseline.baselineId}`} className="first-heading">
            <Said>{baseline.name}</Said>
          </h3>
          <p>
            <Said>{baselineKinds[baseline.kind]}</Said>
          </p>
          <dl className="facts">
            {facts.map((name) => (
              <div key={name} className="fact">
                <dt>{text(name)}</dt>
                <dd>
                  <Said>{baseline[name]}</Said>
                </dd>
              </div>
            ))}
          </dl>
          <details>
            <summary>{text("rows", { count: baseline.rows.length })}</summary>
            <Rows baseline={baseline} />
          </details>
        </article>
      ))}
    </section>
  );
}

function Rows({ baseline: { kind, name, rows } }: { baseline: Baseline }): ReactNode {
  const columns = baselineColumns[kind].filter((column) => rows.some((row) => (row[column] ?? "") !== ""));
  return (
    <div className="wide">
      <table className="ledger">
        <caption>
          <Said>{name}</Said>
        </caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column} scope="col">
                <Said>{column.replaceAll("_", " ")}</Said>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={JSON.stringify(row)}>
              {columns.map((column) => (
                <td key={column}>
                  <Said>{row[column] ?? ""}</Said>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
