import { Fragment, type ReactNode, useState } from "react";
import type { readMonth } from "../../../../shared/api/months.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import type { SheetCell } from "../../../../shared/sheet.ts";
import { Said } from "../../parts/said.tsx";
import { cellOf, monthWords } from "../../parts/words.ts";
import { monthText as text } from "../../texts/month.ts";
import { Figure } from "./figure.tsx";
import { WardDays } from "./ward-days.tsx";

type MonthAnswer = OutputOf<typeof readMonth>;

/** The columns of figures, in their order. */
export const figures = [
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
        {text("caption", { month: monthWords(month) })} <span className="on-screen">{text("opens")}</span>
      </caption>
      <thead>
        <tr>
          <th scope="col">
            <Said>{labelOf("ward")}</Said>
          </th>
          {figures.map(({ key }) => (
            <th scope="col" className="figure" key={key}>
              <Said>{labelOf(key)}</Said>
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
            <th scope="row">
              <Said>{cellOf(sheet, sheet.total, "ward")}</Said>
            </th>
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
          <span className="code">
            <Said>{code}</Said>
          </span>
          {name !== code && (
            <span className="name-of">
              {" "}
              <Said>{name}</Said>
            </span>
          )}
          {note !== "" && (
            <span className="note">
              {" "}
              <Said>{note}</Said>
            </span>
          )}
        </th>
        {figures.map(({ key, kind }) => {
          const label = sheet.columns.find((column) => column.key === key)?.label.toLowerCase() ?? key;
          const words = text("opensWard", { what: label, ward: code ?? "" });
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
