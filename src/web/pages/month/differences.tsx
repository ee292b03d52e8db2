import type { ReactNode } from "react";
import type { readMonthSignatures } from "../../../../shared/api/month-figures.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { digitsOf } from "../../../../shared/figure-words.ts";
import { Said } from "../../parts/said.tsx";
import { numberWords } from "../../parts/words.ts";
import { signingText as text } from "../../texts/signing.ts";

type Difference = OutputOf<typeof readMonthSignatures>["differences"][number];

/** What is no longer as it was signed, each with what was signed and what the record says now. */
export function Differences({ differences, id }: { differences: readonly Difference[]; id?: string }): ReactNode {
  return (
    <>
      <h2 id={id}>{text("changed", { count: differences.length })}</h2>
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
          {differences.map(({ wardId, ward, what, signed, now, figure }) => (
            <tr key={`${wardId} ${what}`}>
              <td>{ward === null ? text("together") : <Said>{ward}</Said>}</td>
              <th scope="row">
                <Said>{what}</Said>
              </th>
              <td>{shown(signed, figure)}</td>
              <td>{shown(now, figure)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

/** A number has the digits of its figure, or more where the answer has more to tell two apart. */
function shown(value: string | number | null, figure: Difference["figure"]): ReactNode {
  if (value === null) return text("nothing");
  if (typeof value === "string") return <Said>{value}</Said>;
  const given = String(value).split(".")[1]?.length ?? 0;
  return numberWords(value, Math.max(given, figure === null ? 0 : digitsOf(figure)));
}
