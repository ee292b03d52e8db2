import { type ReactNode, useRef, useState } from "react";
import { readImportLines } from "../../../../shared/api/import-lines.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import type { LineKind } from "../../../../shared/import-words.ts";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { importText } from "../../texts/imports.ts";
import { ImportLine } from "./import-line.tsx";
import type { ImportTold } from "./import-page.tsx";

export type Line = OutputOf<typeof readImportLines>["lines"][number];

/** A line at which the page is opened. */
export interface LineAsked {
  readonly kind: LineKind;
  readonly file: string;
  readonly line: number;
}

/** Lines of an import that need a person, or got one's attention: refused, repaired, dropped, doubtful. */
export function ImportLines(props: { told: ImportTold; again: () => void; at: LineAsked | null }): ReactNode {
  const { told, again, at } = props;
  const { state, counts } = told;
  const [done, setDone] = useState<string | null>(null);
  const place = useRef<HTMLParagraphElement>(null);
  const isStored = state === "applied";
  const settled = (words: string): void => {
    setDone(words);
    again();
    place.current?.focus();
  };
  return (
    <>
      <p role="status" ref={place} tabIndex={-1} className={done === null ? "unseen" : "notice done"}>
        {done}
      </p>
      {counts.refused > 0 ? (
        <Lines
          key={`refused ${counts.refused}`}
          {...{ told, settled, at }}
          kind="refused"
          title={importText(isStored ? "setAsideTitle" : "faultsTitle")}
        />
      ) : (
        isStored && <p>{importText("setAsideNone")}</p>
      )}
      {counts.dropped > 0 && (
        <Lines
          key={`dropped ${counts.dropped}`}
          {...{ told, settled, at }}
          kind="dropped"
          title={importText("droppedTitle")}
        />
      )}
      {counts.marked > 0 && (
        <Lines
          key={`marked ${counts.marked}`}
          {...{ told, settled, at }}
          kind="marked"
          title={importText("markedTitle")}
        />
      )}
    </>
  );
}

/** Each reading is recorded, so lines are read anew only when their number changed. */
function Lines(props: {
  told: ImportTold;
  kind: LineKind;
  title: string;
  settled: (words: string) => void;
  at: LineAsked | null;
}): ReactNode {
  const { told, kind, title, settled } = props;
  const { importId, state } = told;
  // The list begins with the line that was asked for: that is where its page before ended.
  const at = props.at?.kind === kind ? props.at : null;
  const [after, setAfter] = useState(at && `${at.file}:${Math.max(0, at.line - 1)}`);
  const asked = useAnswer(readImportLines, { importId, kind, ...(after === null ? {} : { after }) });
  const isRepairable = state === "applied" && kind === "refused";
  return (
    <section aria-labelledby={`lines-${kind}`}>
      <h2 id={`lines-${kind}`}>{title}</h2>
      <ShowAnswer asked={asked} what={importText("linesWhat")}>
        {({ lines, next }) => (
          <>
            {lines.map((line) => (
              <ImportLine
                key={`${line.file} ${line.line}`}
                {...{ importId, line, isRepairable, settled }}
                isAsked={line.file === at?.file && line.line === at.line}
              />
            ))}
            <p className="row on-screen">
              {next !== null && (
                <button type="button" onClick={() => setAfter(next)}>
                  {importText("more")}
                </button>
              )}
              {after !== null && (
                <button type="button" onClick={() => setAfter(null)}>
                  {importText("first")}
                </button>
              )}
            </p>
          </>
        )}
      </ShowAnswer>
    </section>
  );
}
