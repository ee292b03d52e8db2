import { Fragment, type ReactNode, useState } from "react";
import { readWardMonth } from "../../../shared/api/months.ts";
import { type Day, day as dayText, type Month } from "../../../shared/day.ts";
import type { Sheet, SheetCell } from "../../../shared/sheet.ts";
import { Figure } from "./figure.tsx";
import { ShowAnswer } from "./show-answer.tsx";
import { useAnswer } from "./use-answer.ts";
import { WardDayPatients } from "./ward-day-patients.tsx";
import { cellOf, dayWords, monthWords } from "./words.ts";

interface WardMonth {
  readonly wardId: number;
  readonly code: string;
  readonly month: Month;
  readonly seesPatients: boolean;
}

/** The ward days of a ward's month; each opens to its patients where the viewer may see them. */
export function WardDays(ward: WardMonth): ReactNode {
  const { wardId, code, month } = ward;
  const asked = useAnswer(readWardMonth, { wardId, month });
  return (
    <ShowAnswer asked={asked} what={`the ward days of ${code}`}>
      {({ sheet }) =>
        sheet.rows.length === 0 ? (
          <p>
            No patient was counted on {code} in {monthWords(month)}.
          </p>
        ) : (
          <DayTable {...ward} sheet={sheet} />
        )
      }
    </ShowAnswer>
  );
}

function DayTable({ sheet, ...ward }: WardMonth & { sheet: Sheet }): ReactNode {
  const { code, month, seesPatients } = ward;
  return (
    <>
      <table className="ledger inner">
        <caption>
          Ward days of {code} in {monthWords(month)}.{" "}
          <span className="on-screen">
            {seesPatients
              ? "Each figure opens to its patients."
              : "Your role shows ward days; it does not show patients."}
          </span>
        </caption>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col" className="figure">
              Patient-days
            </th>
            <th scope="col" className="figure">
              Catheter-days
            </th>
          </tr>
        </thead>
        <tbody>
          {sheet.rows.map((row) => {
            const day = dayText.parse(cellOf(sheet, row, "day"));
            return <DayRow key={day} {...ward} {...{ sheet, row, day }} />;
          })}
        </tbody>
      </table>
      <p className="small">Days without a patient at the census are not listed.</p>
    </>
  );
}

function DayRow(props: WardMonth & { sheet: Sheet; row: readonly SheetCell[]; day: Day }): ReactNode {
  const { sheet, row, day, wardId, code, seesPatients } = props;
  const [isOpen, setOpen] = useState(false);
  const panelId = `ward-${wardId}-day-${day}`;
  const openingOf = (what: string) =>
    seesPatients
      ? { isOpen, panelId, toggle: () => setOpen(!isOpen), words: `${what} on ${dayWords(day)}: show the patients` }
      : undefined;
  return (
    <Fragment>
      <tr className={isOpen ? "open" : undefined}>
        <th scope="row">{dayWords(day)}</th>
        <Figure cell={cellOf(sheet, row, "patient_days")} kind="whole" opening={openingOf("patient-days")} />
        <Figure cell={cellOf(sheet, row, "catheter_days")} kind="whole" opening={openingOf("catheter-days")} />
      </tr>
      {isOpen && (
        <tr className="panel">
          <td colSpan={3} id={panelId}>
            <WardDayPatients {...{ wardId, code, day }} />
          </td>
        </tr>
      )}
    </Fragment>
  );
}
