import { type ReactNode, useState } from "react";
import { readEvents } from "../../../../shared/api/events.ts";
import { type Day, day as dayText } from "../../../../shared/day.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { goTo } from "../../parts/address.ts";
import { DaysForm } from "../../parts/days-form.tsx";
import { EventsTable } from "../../parts/events-table.tsx";
import { Page } from "../../parts/page.tsx";
import { Said } from "../../parts/said.tsx";
import { saveFile } from "../../parts/save-file.ts";
import { Sentences } from "../../parts/sentences.tsx";
import { askForCsv } from "../../parts/server.ts";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { longDayWords } from "../../parts/words.ts";
import type { PageProps } from "../../routes.ts";
import { infectionsText as text } from "../../texts/infections.ts";

interface Days {
  readonly first: Day;
  readonly last: Day;
}

/** What is told of an event of some days. */
const shown = [
  ...["date", "ward", "patient", "criterion", "catheter", "organisms", "bloodstream"],
  ...["work", "disagreement"],
];

/** The infections of any days, over the ends of months. The days stand in the address; nothing is read before they do. */
export function InfectionsPage({ question }: PageProps): ReactNode {
  const [first, last] = ["first", "last"].map((name) => dayText.safeParse(question.get(name)));
  const asked = first?.success && last?.success ? { first: first.data, last: last.data } : null;
  return (
    <Page title={text("periodTitle")}>
      <p className="lead">{text("periodLead")}</p>
      <DaysForm
        key={`${asked?.first} ${asked?.last}`}
        name={text("periodForm")}
        labels={{ first: text("periodFirst"), last: text("periodLast"), button: text("periodShow") }}
        asked={asked}
        show={(days) => goTo(`/infections?${new URLSearchParams({ ...days })}`)}
      />
      {asked && <InfectionsOf days={asked} />}
    </Page>
  );
}

function InfectionsOf({ days }: { days: Days }): ReactNode {
  const asked = useAnswer(readEvents, days);
  return (
    <ShowAnswer asked={asked} what={text("eventsWhat")}>
      {(answer) => <Events {...{ answer, days }} />}
    </ShowAnswer>
  );
}

function Events({ answer, days }: { answer: OutputOf<typeof readEvents>; days: Days }): ReactNode {
  const { sheet, counted } = answer;
  const [first, last] = [longDayWords(days.first), longDayWords(days.last)];
  return (
    <>
      {sheet.rows.length === 0 ? (
        <p role="status">
          <Said>{text("periodNone", { first, last })}</Said>
        </p>
      ) : (
        <>
          <p>
            <Said>{counted.join(" ")}</Said>
          </p>
          <section className="wide" aria-label={text("periodScroll")}>
            <EventsTable
              {...{ answer, shown }}
              caption={text("periodCaption", { count: sheet.rows.length, first, last })}
              className="ledger many"
            />
          </section>
        </>
      )}
      <Sentences id="cautions" title={text("cautions")} sentences={sheet.cautions} />
      <Sentences id="sources" title={text("sources")} sentences={sheet.sources} />
      <TakeRows days={days} />
    </>
  );
}

/** Prints the page, or hands out its rows as a file. */
function TakeRows({ days }: { days: Days }): ReactNode {
  const [failed, setFailed] = useState(false);
  const take = async (): Promise<void> => {
    const rows = await askForCsv(readEvents, days);
    setFailed(rows === null);
    if (rows !== null) saveFile(`infections-${days.first}-to-${days.last}.csv`, new Blob([rows], { type: "text/csv" }));
  };
  return (
    <div className="row on-screen">
      <button type="button" onClick={() => window.print()}>
        {text("print")}
      </button>
      <button type="button" onClick={() => void take()}>
        {text("csv")}
      </button>
      {failed && <p role="alert">{text("csvFailed")}</p>}
    </div>
  );
}
