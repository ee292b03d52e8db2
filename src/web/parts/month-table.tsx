import { Fragment, type ReactNode, useState } from "react";
import type { readMonth } from "../../../shared/api/months.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import type { SheetCell } from "../../../shared/sheet.ts";
import { Figure } from "./figure.tsx";
import { WardDays } from "./ward-days.tsx";
import { cellOf, monthWords } from "./words.ts";

type MonthAnswer = OutputOf<typeof readMonth>;

/** The columns of figures, in their order. */
const figures = [
  { key: "patient_days", kind: "whole" },
  { key: "catheter_days", kind: "whole" },
  { key: "utilization", kind: "ratio" },
] as const;

/** The wards of a month; each figure opens to the ward days it was made of. */
export function MonthTable({ answer, seesPatients }: { answer: MonthAnswer; seesPatients: boolean }): ReactNode {
  const { sheet, wardIds, month } = answer;
  const labelOf = (key: string): string => sheet.columns.find((column) => column.key === key)?.label ?? key;
  return (
    <table className="ledger">
      <caption>
        Wards in {monthWords(month)}. <span className="on-screen">Each figure opens to the ward days behind it.</span>
      </caption>
      <thead>
        <tr>
          <th scope="col">{labelOf("ward")}</th>
          {figures.map(({ key }) => (
            <th scope="col" className="figure" key={key}>
              {labelOf(key)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {sheet.rows.map((row, at) => {
          const wardId = wardIds[at];
          if (wardId === undefined) throw new Error("The month has a row without a ward");
          return <WardRow key={wardId} {...{ answer, row, wardId, seesPatients }} />;
        })}
      </tbody>
      {sheet.total && (
        <tfoot>
          <tr>
            <th scope="row">{cellOf(sheet, sheet.total, "ward")}</th>
            {figures.map(({ key, kind }) => (
              <Figure key={key} cell={cellOf(sheet, sheet.total ?? [], key)} kind={kind} />
            ))}
          </tr>
        </tfoot>
      )}
    </table>
  );
}

function WardRow(props: {
  answer: MonthAnswer;
  row: readonly SheetCell[];
  wardId: number;
  seesPatients: boolean;
}): ReactNode {
  const { answer, row, wardId, seesPatients } = props;
  const [isOpen, setOpen] = useState(false);
  const { sheet, month } = answer;
  const [code, name, note] = ["ward", "name", "note"].map((key) => cellOf(sheet, row, key) ?? "");
  const opening = { isOpen, panelId: `ward-${wardId}`, toggle: () => setOpen(!isOpen) };
  return (
    <Fragment>
      <tr className={isOpen ? "open" : undefined}>
        <th scope="row">
          <span className="code">{code}</span>
          {name !== code && <span className="name-of"> {name}</span>}
          {note !== "" && <span className="note"> {note}</span>}
        </th>
        {figures.map(({ key, kind }) => {
          const label = sheet.columns.find((column) => column.key === key)?.label.toLowerCase() ?? key;
          const words = `${label} of ${code}: show the ward days`;
          return <Figure key={key} cell={cellOf(sheet, row, key)} kind={kind} opening={{ ...opening, words }} />;
        })}
      </tr>
      {isOpen && (
        <tr className="panel">
          <td colSpan={figures.length + 1} id={opening.panelId}>
            <WardDays {...{ wardId, month, code: String(code), seesPatients }} />
          </td>
        </tr>
      )}
    </Fragment>
  );
}
