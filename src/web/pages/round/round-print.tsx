import type { ReactNode } from "react";
import { compareBeds } from "../../../../shared/bed-order.ts";
import type { PolicyBody } from "../../../../shared/policy.ts";
import { Said } from "../../parts/said.tsx";
import { Shape } from "../../parts/shape.tsx";
import { indicationLabel } from "../../texts/indications.ts";
import { roundText } from "../../texts/round.ts";
import { stateText } from "../../texts/words.ts";
import type { Round } from "./round-rows.ts";

/** The round as one printed page for hand-over, by bed, with room for notes. */
export function RoundPrint({ round, policy }: { round: Round; policy: PolicyBody }): ReactNode {
  const rows = [...round.rows].sort((a, b) => compareBeds(a.bed, b.bed));
  const heads = ["printBed", "printPatient", "printDay", "printIndication", "printStates", "printNotes"] as const;
  return (
    <table className="on-paper">
      <caption>{roundText("printColumns")}</caption>
      <thead>
        <tr>
          {heads.map((head) => (
            <th scope="col" key={head}>
              {roundText(head)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.catheterId}>
            <td>{row.bed ?? ""}</td>
            <td>
              <Said>{row.identifier}</Said>
            </td>
            <td>{row.eligibilityDay ?? roundText(row.age.atLeast ? "ageAtLeast" : "age", { count: row.age.days })}</td>
            <td>
              <Said>{indicationLabel(row.indication, policy)}</Said>
            </td>
            <td>
              {row.states.map(({ state }) => (
                <span key={state} className="paper-state">
                  <Shape state={state} /> {stateText(state)}
                </span>
              ))}
            </td>
            <td className="paper-notes" />
          </tr>
        ))}
      </tbody>
    </table>
  );
}
