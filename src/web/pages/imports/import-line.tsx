import { type ReactNode, useEffect, useRef } from "react";
import { Said } from "../../parts/said.tsx";
import { importText } from "../../texts/imports.ts";
import type { Line } from "./import-lines.tsx";
import { RepairLine } from "./repair-line.tsx";

/** A line as it stands in its file, and beside it what is wrong with it; repaired or dropped where it may be. */
export function ImportLine(props: {
  importId: number;
  line: Line;
  isRepairable: boolean;
  settled: (words: string) => void;
  /** The page was opened at this line. */
  isAsked: boolean;
}): ReactNode {
  const { importId, line, isRepairable, settled, isAsked } = props;
  const card = useRef<HTMLElement>(null);
  useEffect(() => {
    if (isAsked) card.current?.focus();
  }, [isAsked]);
  const { file, line: number, text, cells } = line;
  const place = number === null ? importText("whole", { file }) : importText("place", { file, line: number });
  return (
    <article className="card" aria-label={place} ref={card} tabIndex={isAsked ? -1 : undefined}>
      <h3>{place}</h3>
      <div className="beside">
        {text !== null && text !== "" && (
          <p>
            <Said>
              <code>{text}</code>
            </Said>
          </p>
        )}
        <WhatIsWrong line={line} />
      </div>
      {isRepairable && number !== null && cells !== null && (
        <RepairLine {...{ importId, file, place, cells, settled }} line={number} />
      )}
    </article>
  );
}

function WhatIsWrong({ line }: { line: Line }): ReactNode {
  const { faults, marks, reason } = line;
  return (
    <ul>
      {faults.map(({ code, line: at, column, detail, remedy, other }) => (
        <li key={`${code} ${column} ${at}`}>
          {at !== null && `${importText("faultLine", { line: at })} `}
          {column !== null && <strong>{importText("column", { column })} </strong>}
          <Said>
            {detail} {remedy}
          </Said>
          {other !== null && ` ${importText("other", { other })}`}
        </li>
      ))}
      {marks.map((mark) => (
        <li key={mark}>
          <Said>{mark}</Said>
        </li>
      ))}
      {reason !== null && (
        <li>
          <Said>{importText("reason", { reason })}</Said>
        </li>
      )}
    </ul>
  );
}
