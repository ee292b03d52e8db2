import { type ReactNode, useState } from "react";
import { readMonthDocument } from "../../../../shared/api/month-document.ts";
import { readMonthFigureSheet } from "../../../../shared/api/month-figures.ts";
import { readMonth, readMonthCare } from "../../../../shared/api/months.ts";
import type { Month } from "../../../../shared/day.ts";
import { askForCsv } from "../../parts/server.ts";
import { TakeDocument } from "../../parts/take-document.tsx";
import { monthText as text } from "../../texts/month.ts";
import { statisticsText } from "../../texts/statistics.ts";

type Sheets = typeof readMonth | typeof readMonthCare | typeof readMonthFigureSheet;

/** Prints the page, and hands out its figures, and those of reviews and care, as files. */
export function TakeAway({ month }: { month: Month }): ReactNode {
  const [failed, setFailed] = useState(false);
  const take = async (endpoint: Sheets, name: string): Promise<void> => {
    const rows = await askForCsv(endpoint, { month });
    setFailed(rows === null);
    if (rows !== null) saveAs(`${name}-${month}.csv`, rows);
  };
  return (
    <div className="row on-screen">
      <button type="button" onClick={() => window.print()}>
        {text("print")}
      </button>
      <button type="button" onClick={() => void take(readMonth, "days")}>
        {text("csv")}
      </button>
      <button type="button" onClick={() => void take(readMonthCare, "care")}>
        {text("csvCare")}
      </button>
      <button type="button" onClick={() => void take(readMonthFigureSheet, "statistics")}>
        {statisticsText("csv")}
      </button>
      {failed && <p role="alert">{text("csvFailed")}</p>}
      <TakeDocument endpoint={readMonthDocument} input={{ month }} name={`month-${month}`} />
    </div>
  );
}

/** Hands a file to the browser, which saves it where the person keeps such files. */
function saveAs(name: string, rows: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([rows], { type: "text/csv" }));
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
}
