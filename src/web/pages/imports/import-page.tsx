import { type ReactNode, useCallback, useEffect, useRef } from "react";
import { readImport } from "../../../../shared/api/imports.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { isAtWork, lineKinds } from "../../../../shared/import-words.ts";
import { Page } from "../../parts/page.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import type { PageProps } from "../../routes.ts";
import { importText } from "../../texts/imports.ts";
import { Decide } from "./decide.tsx";
import { Effects } from "./effects.tsx";
import { FileCounts } from "./file-counts.tsx";
import { ImportLines, type LineAsked } from "./import-lines.tsx";
import { ImportState } from "./import-state.tsx";
import { Progress } from "./progress.tsx";

export type ImportTold = OutputOf<typeof readImport>;

/** How often an import on which the service works is asked for. */
const everyMs = 1000;

/** One import: how far it is, what it would change, what was refused and why, and what a person decides about it. */
export function ImportPage({ found, question }: PageProps): ReactNode {
  const importId = Number(found.importId);
  const asked = useAnswer(readImport, { importId });
  const { again } = asked;
  const value = asked.state === "answered" ? asked.value : null;
  useEffect(() => {
    if (value === null || !isAtWork(value)) return;
    const timer = setTimeout(again, everyMs);
    return () => clearTimeout(timer);
  }, [value, again]);
  return (
    <Page title={importText("title", { number: importId })}>
      <p className="on-screen">
        <PageLink to="/imports">{importText("back")}</PageLink>
      </p>
      <ShowAnswer asked={asked} what={importText("what")}>
        {(told) => <Shown told={told} again={again} at={lineAsked(question)} />}
      </ShowAnswer>
    </Page>
  );
}

/** The line at which the page is opened: its list, file and number; null for the whole import. */
function lineAsked(question: URLSearchParams): LineAsked | null {
  const kind = lineKinds.find((one) => one === question.get("kind"));
  const place = /^(?<file>[a-z-]{1,40}\.csv):(?<line>\d{1,9})$/.exec(question.get("line") ?? "")?.groups;
  return kind && place?.file ? { kind, file: place.file, line: Number(place.line) } : null;
}

function Shown({ told, again, at }: { told: ImportTold; again: () => void; at: LineAsked | null }): ReactNode {
  const { may } = useSession();
  const place = useRef<HTMLDivElement>(null);
  // What was touched goes away with the decision, so the focus goes to where it is told how it goes on.
  const decided = useCallback(() => {
    place.current?.focus();
    again();
  }, [again]);
  return (
    <>
      <div ref={place} tabIndex={-1}>
        <Begun told={told} />
        {isAtWork(told) && <Progress told={told} />}
        {told.state === "applied" && (
          <p role="status" className="notice done">
            {importText("applied")} {may("see-counts") && <PageLink to="/months">{importText("toMonths")}</PageLink>}
          </p>
        )}
      </div>
      <Notices told={told} />
      {told.state !== "received" && told.state !== "staging" && <FileCounts told={told} />}
      {told.state === "checked" && told.effects && <Effects effects={told.effects} signedMonths={told.signedMonths} />}
      {told.state === "checked" && <Decide told={told} decided={decided} />}
      {!isAtWork(told) && <ImportLines told={told} again={again} at={at} />}
    </>
  );
}

function Begun({ told }: { told: ImportTold }): ReactNode {
  const { time } = useSession();
  const { state, startedAt, startedByName, sourceName, finishedAt } = told;
  return (
    <p className="row">
      <ImportState state={state} />
      <Said>{importText("begun", { when: time.short(startedAt), who: startedByName })}</Said>
      {sourceName !== null && <Said>{importText("from", { source: sourceName })}</Said>}
      {finishedAt !== null && <span>{importText("ended", { when: time.short(finishedAt) })}</span>}
    </p>
  );
}

function Notices({ told }: { told: ImportTold }): ReactNode {
  if (told.notices.length === 0) return null;
  return (
    <aside className="notice" aria-label={importText("noticesTitle")}>
      <p>
        <strong>{importText("noticesTitle")}</strong>
      </p>
      <ul>
        {told.notices.map(({ file, detail }) => (
          <li key={`${file} ${detail}`}>
            <Said>
              {file === null ? "" : `${file}: `}
              {detail}
            </Said>
          </li>
        ))}
      </ul>
    </aside>
  );
}
