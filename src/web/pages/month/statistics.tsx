import { type ReactNode, useState } from "react";
import { inserters, insertionPlaces } from "../../../../shared/catheter-words.ts";
import type { Month } from "../../../../shared/day.ts";
import type { InsertionCounts, MonthReport, WardFigures } from "../../../../shared/month-report.ts";
import { inSentence } from "../../../../shared/vocabulary.ts";
import { Said } from "../../parts/said.tsx";
import { monthWords } from "../../parts/words.ts";
import { statisticsText as text } from "../../texts/statistics.ts";
import { StatisticRow } from "./statistic-row.tsx";

/** Every figure of one ward or of all, with its interval, what it is made of, and why it is missing where it is. */
export function Statistics(props: {
  report: MonthReport;
  month: Month;
  /** Cautions that stand elsewhere on the page. */
  told: readonly string[];
}): ReactNode {
  const { report, month, told } = props;
  const [code, setCode] = useState("");
  const ward = report.wards.find((one) => one.code === code);
  const { figures, insertions } = ward ?? report.total;
  const title = ward ? ward.code : text("together");
  return (
    <section aria-labelledby="statistics">
      <h2 id="statistics">{text("title")}</h2>
      <p className="row on-screen">
        <label htmlFor="statistics-of">{text("of")}</label>
        <select id="statistics-of" value={code} onChange={(event) => setCode(event.target.value)}>
          <option value="">{text("together")}</option>
          {report.wards.map((one) => (
            <option key={one.wardId} value={one.code}>
              {one.code === one.name ? one.code : `${one.code} ${one.name}`}
            </option>
          ))}
        </select>
      </p>
      <table className="ledger statistics stacks">
        <caption>{text("caption", { ward: title, month: monthWords(month) })}</caption>
        <thead>
          <tr>
            <th scope="col">{text("figure")}</th>
            <th scope="col">{text("value")}</th>
            <th scope="col">{text("madeOf")}</th>
          </tr>
        </thead>
        <tbody>
          {figures.map((figure) => (
            <StatisticRow key={`${code} ${figure.key}`} {...{ figure, month, report }} ward={ward ?? null} />
          ))}
        </tbody>
      </table>
      <Insertions insertions={insertions} />
      <Baselines report={report} />
      {ward && <Predicted ward={ward} />}
      <ul className="small">
        {report.cautions
          .filter((caution) => !told.includes(caution))
          .map((caution) => (
            <li key={caution}>
              <Said>{caution}</Said>
            </li>
          ))}
      </ul>
    </section>
  );
}

function Insertions({ insertions }: { insertions: InsertionCounts }): ReactNode {
  const { places, inserters: people } = insertions;
  if (places.length === 0) return null;
  const counted = (word: string | undefined, count: number) =>
    text("counted", { word: inSentence(word ?? text("notRecorded")), count });
  return (
    <p>
      {text("inserted", {
        places: places.map(({ place, count }) => counted(place ? insertionPlaces[place] : undefined, count)).join(", "),
        people: people
          .map(({ inserter, count }) => counted(inserter ? inserters[inserter] : undefined, count))
          .join(", "),
      })}
    </p>
  );
}

/** What the baselines predict for a ward, term by term. */
function Predicted({ ward }: { ward: WardFigures }): ReactNode {
  const { infections, catheterDays } = ward.predicted;
  const shown = [
    { key: "infections", title: text("predictedInfections"), steps: infections.steps },
    { key: "catheterDays", title: text("predictedCatheterDays"), steps: catheterDays.steps },
  ];
  return (
    <>
      {shown
        .filter(({ steps }) => steps.length > 0)
        .map(({ key, title, steps }) => (
          <p key={key} className="small">
            {title} <Said>{steps.map(({ what, value }) => `${what}: ${stepWords(value)}`).join("; ")}</Said>
          </p>
        ))}
    </>
  );
}

/** A term as it goes into the sum: up to six digits, so that it can be computed again. */
function stepWords(value: number): string {
  return new Intl.NumberFormat("en-US", { maximumSignificantDigits: 6 }).format(value);
}

function Baselines({ report }: { report: MonthReport }): ReactNode {
  const { infections, catheterDays } = report.baselines;
  const used = [infections, catheterDays].flatMap((one) => one ?? []);
  const named = used.filter((one, at) => used.findIndex(({ baselineId }) => baselineId === one.baselineId) === at);
  if (named.length === 0) return <p className="small">{text("noBaseline")}</p>;
  return (
    <>
      {named.map(({ baselineId, name, year, population, definition, source }) => (
        <p key={baselineId} className="small">
          <Said>{text("compared", { name, year, population, definition, source })}</Said>
        </p>
      ))}
      {report.goal !== null && <p className="small">{text("goal", { goal: report.goal })}</p>}
    </>
  );
}
