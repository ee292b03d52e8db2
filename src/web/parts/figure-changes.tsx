import type { ReactNode } from "react";
import { digitsOf } from "../../../shared/figure-words.ts";
import type { FigureChange } from "../../../shared/signed-changes.ts";
import { fieldText } from "../texts/fields.ts";
import { Said } from "./said.tsx";
import { numberWords } from "./words.ts";

/** Figures of a signed month as they were and as they are, one a row; `columns` are other words for before and after. */
export function FigureTable(props: {
  figures: readonly FigureChange[];
  caption: string;
  columns?: readonly [string, string];
}): ReactNode {
  const { figures, caption, columns = [fieldText("before"), fieldText("after")] } = props;
  return (
    <table className="ledger statistics figure-changes">
      <caption>{caption}</caption>
      <thead>
        <tr>
          {[fieldText("unit"), fieldText("figure"), ...columns].map((column) => (
            <th scope="col" key={column}>
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {figures.map((one) => (
          <tr key={JSON.stringify(one)}>
            <td>{one.ward === null ? fieldText("allUnits") : <Said>{one.ward}</Said>}</td>
            <th scope="row">
              <Said>{one.what}</Said>
            </th>
            <td>
              <FigureValue value={one.before} figure={one.figure} />
            </td>
            <td>
              <FigureValue value={one.after} figure={one.figure} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** A number has the digits of its figure, or more where the answer has more to tell two apart. */
export function FigureValue(props: { value: FigureChange["before"]; figure: FigureChange["figure"] }): ReactNode {
  const { value, figure } = props;
  if (value === null) return fieldText("noFigure");
  if (typeof value === "string") return <Said>{value}</Said>;
  const given = String(value).split(".")[1]?.length ?? 0;
  return numberWords(value, Math.max(given, figure === null ? 0 : digitsOf(figure)));
}
