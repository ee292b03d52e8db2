import type { ReactNode } from "react";
import type { readMonthSignatures } from "../../../../shared/api/month-figures.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { Said } from "../../parts/said.tsx";
import { numberWords } from "../../parts/words.ts";
import { signingText as text } from "../../texts/signing.ts";

type Difference = OutputOf<typeof readMonthSignatures>["differences"][number];

/** What is no longer as it was signed, each with what was signed and what the record says now. */
export function Differences({ differences }: { differences: readonly Difference[] }): ReactNode {
  if (differences.length === 0) return <p>{text("same")}</p>;
  return (
    <>
      <h3>{text("changed", { count: differences.length })}</h3>
      <table className="ledger statistics">
        <caption>{text("changedCaption")}</caption>
        <thead>
          <tr>
            {(["ward", "thing", "was", "is"] as const).map((column) => (
              <th scope="col" key={column}>
                {text(column)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {differences.map(({ wardId, ward, what, signed, now }) => (
            <tr key={`${wardId} ${what}`}>
              <td>{ward === null ? text("together") : <Said>{ward}</Said>}</td>
              <th scope="row">
                <Said>{what}</Said>
              </th>
              <td>{shown(signed)}</td>
              <td>{shown(now)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function shown(value: string | number | null): ReactNode {
  if (value === null) return text("nothing");
  return typeof value === "number" ? numberWords(value, Number.isInteger(value) ? 0 : 3) : <Said>{value}</Said>;
}
