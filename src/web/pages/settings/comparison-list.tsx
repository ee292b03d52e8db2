import type { ReactNode } from "react";
import type { listBaselines, listComparisons } from "../../../../shared/api/baselines.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { limitRules } from "../../../../shared/month-report.ts";
import { WithNames } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { baselinesText as text } from "../../texts/baselines.ts";

export type Baselines = OutputOf<typeof listBaselines>["baselines"];
export type Comparisons = OutputOf<typeof listComparisons>["comparisons"];

const columns = ["number", "fromMonth", "infections", "catheterDays", "goal", "limits", "reason", "by"] as const;

/** The versions of what months are compared with, the latest first. */
export function ComparisonList({ known, versions }: { known: Baselines; versions: Comparisons }): ReactNode {
  const nameOf = (id: number | null) => known.find(({ baselineId }) => baselineId === id)?.name ?? text("none");
  if (versions.length === 0) return <p className="notice">{text("noComparisons")}</p>;
  return (
    <section aria-labelledby="comparisons">
      <h2 id="comparisons">{text("comparisons")}</h2>
      <WithNames what={text("comparisonsWhat")}>
        {(personOf) => (
          <div className="wide">
            <table className="ledger">
              <thead>
                <tr>
                  {columns.map((name) => (
                    <th scope="col" key={name}>
                      {text(name)}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {versions.toReversed().map((version) => {
                  const { number, fromMonth, infectionBaselineId, utilizationBaselineId, goal, limits } = version;
                  return (
                    <tr key={number}>
                      <th scope="row">{number}</th>
                      {[
                        fromMonth,
                        nameOf(infectionBaselineId),
                        nameOf(utilizationBaselineId),
                        goal === null ? text("none") : String(goal),
                        limitRules[limits],
                        version.reason,
                        personOf(version.recordedBy),
                      ].map((cell, at) => (
                        <td key={columns[at + 1]}>
                          <Said>{cell}</Said>
                        </td>
                      ))}
                    </tr>
                  );
                })}
              </tbody>
            </table>
          </div>
        )}
      </WithNames>
    </section>
  );
}
