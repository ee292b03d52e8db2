import { Fragment, type ReactNode, useId, useState } from "react";
import { readWardMonth } from "../../../../shared/api/months.ts";
import { type Day, day as dayText, type Month } from "../../../../shared/day.ts";
import type { Sheet, SheetCell } from "../../../../shared/sheet.ts";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { cellOf, dayWords, monthWords } from "../../parts/words.ts";
import { monthText as text } from "../../texts/month.ts";
import { Figure } from "./figure.tsx";
import { WardDayPatients } from "./ward-day-patients.tsx";

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
    <ShowAnswer asked={asked} what={text("daysWhat", { ward: code })}>
      {({ sheet }) =>
        sheet.rows.length === 0 ? (
          <p>{text("daysNone", { ward: code, month: monthWords(month) })}</p>
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
          {text("daysCaption", { ward: code, month: monthWords(month) })}{" "}
          <span className="on-screen">{text(seesPatients ? "opensPatients" : "noPatients")}</span>
        </caption>
        <thead>
          <tr>
            <th scope="col">{text("day")}</th>
            <th scope="col" className="figure">
              {text("patientDays")}
            </th>
            <th scope="col" className="figure">
              {text("catheterDays")}
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
      <p className="small">{text("notListed")}</p>
    </>
  );
}

function DayRow(props: WardMonth & { sheet: Sheet; row: readonly SheetCell[]; day: Day }): ReactNode {
  const { sheet, row, day, wardId, code, seesPatients } = props;
  const [isOpen, setOpen] = useState(false);
  const panelId = useId();
  const openingOf = (what: string) =>
    seesPatients
      ? { isOpen, panelId, toggle: () => setOpen(!isOpen), words: text("opensDay", { what, day: dayWords(day) }) }
      : undefined;
  return (
    <Fragment>
      <tr className={isOpen ? "open" : undefined}>
        <th scope="row">{dayWords(day)}</th>
        <Figure
          cell={cellOf(sheet, row, "patient_days")}
          kind="whole"
          opening={openingOf(text("patientDays").toLowerCase())}
        />
        <Figure
          cell={cellOf(sheet, row, "catheter_days")}
          kind="whole"
          opening={openingOf(text("catheterDays").toLowerCase())}
        />
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
