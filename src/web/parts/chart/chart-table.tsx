import type { ReactNode } from "react";
import type { ChartTable } from "../../../charts/chart.ts";
import { chartFigureText as text } from "../../texts/chart-figure.ts";
import { Said } from "../said.tsx";

type Cell = ChartTable["rows"][number][number];

/** The figures behind a chart; what is missing says so, or `nothing` where an empty cell is no figure that is missing. */
export function ChartTableShown({ table, nothing }: { table: ChartTable; nothing?: string }): ReactNode {
  const { caption, columns, rows } = table;
  return (
    // The table scrolls sideways within the page, so the keyboard must reach it.
    <section className="wide" aria-label={text("tableOf", { title: caption })} tabIndex={-1}>
      <table className="ledger chart-table">
        <caption>
          <Said>{caption}</Said>
        </caption>
        <thead>
          <tr>
            {columns.map(({ label, unit }) => (
              <th key={label} scope="col" className={unit === null ? undefined : "figure"}>
                <Said>
                  {label}
                  {unit !== null && unit !== label && <span className="unit"> ({unit})</span>}
                </Said>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, at) => (
            <Row key={keyOf(row, at)} row={row} table={table} nothing={nothing ?? text("missing")} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Wards may have several rows, and rows have no names of their own. */
function keyOf(row: readonly Cell[], at: number): string {
  return `${at} ${row[0]}`;
}

function Row({ row, table, nothing }: { row: readonly Cell[]; table: ChartTable; nothing: string }): ReactNode {
  return (
    <tr>
      {table.columns.map(({ label, unit }, at) => {
        const cell = row[at] ?? null;
        const shown = cell === null ? nothing : <Said>{typeof cell === "number" ? figure(cell) : cell}</Said>;
        if (at === 0) {
          return (
            <th key={label} scope="row">
              {shown}
            </th>
          );
        }
        return (
          <td key={label} className={unit === null ? undefined : "figure"}>
            {shown}
          </td>
        );
      })}
    </tr>
  );
}

const figures = new Intl.NumberFormat("en-US", { maximumFractionDigits: 12 });

function figure(value: number): string {
  return figures.format(value);
}
