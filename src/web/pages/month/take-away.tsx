import { type ReactNode, useState } from "react";
import { readEvents, readMonthCultures } from "../../../../shared/api/events.ts";
import { readMonthDocument } from "../../../../shared/api/month-document.ts";
import { readMonthFigureSheet } from "../../../../shared/api/month-figures.ts";
import { readMonth, readMonthCare } from "../../../../shared/api/months.ts";
import type { Month } from "../../../../shared/day.ts";
import { saveFile } from "../../parts/save-file.ts";
import { askForCsv } from "../../parts/server.ts";
import { TakeDocument } from "../../parts/take-document.tsx";
import { daysOfMonth } from "../../parts/words.ts";
import { infectionsText } from "../../texts/infections.ts";
import { monthText as text } from "../../texts/month.ts";
import { statisticsText } from "../../texts/statistics.ts";

/** Prints the page, and hands out its figures, and those of reviews, care and infections, as files. */
export function TakeAway({ month }: { month: Month }): ReactNode {
  const [failed, setFailed] = useState(false);
  const take = async (name: string, ask: () => Promise<string | null>): Promise<void> => {
    const rows = await ask();
    setFailed(rows === null);
    if (rows !== null) saveFile(`${name}-${month}.csv`, new Blob([rows], { type: "text/csv" }));
  };
  const sheets = [
    { name: "days", words: text("csv"), ask: () => askForCsv(readMonth, { month }) },
    { name: "care", words: text("csvCare"), ask: () => askForCsv(readMonthCare, { month }) },
    { name: "statistics", words: statisticsText("csv"), ask: () => askForCsv(readMonthFigureSheet, { month }) },
    { name: "infections", words: infectionsText("csv"), ask: () => askForCsv(readEvents, daysOfMonth(month)) },
    { name: "cultures", words: infectionsText("culturesCsv"), ask: () => askForCsv(readMonthCultures, { month }) },
  ];
  return (
    <div className="row on-screen">
      <button type="button" onClick={() => window.print()}>
        {text("print")}
      </button>
      {sheets.map(({ name, words, ask }) => (
        <button key={name} type="button" onClick={() => void take(name, ask)}>
          {words}
        </button>
      ))}
      {failed && <p role="alert">{text("csvFailed")}</p>}
      <TakeDocument endpoint={readMonthDocument} input={{ month }} name={`month-${month}`} />
    </div>
  );
}
