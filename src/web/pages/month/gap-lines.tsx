import type { ReactNode } from "react";
import type { readMonthGaps } from "../../../../shared/api/months.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { instantWords } from "../../parts/words.ts";
import { importText } from "../../texts/imports.ts";
import { monthText as text } from "../../texts/month.ts";

type Gap = OutputOf<typeof readMonthGaps>["gaps"][number];
type GapLine = Gap["lines"][number];

/** The lines and imports that an item is about: each opens where it is repaired. A dropped one shows its reason. */
export function GapLines({ gap }: { gap: Gap }): ReactNode {
  const { lines, imports, kind, count } = gap;
  if (lines.length === 0 && imports.length === 0) return null;
  const list = kind.startsWith("rejected") ? "refused" : kind === "dropped-lines" ? "dropped" : "marked";
  return (
    <details>
      <summary>{text(lines.length > 0 ? "gapLines" : "gapImports", { count: lines.length || imports.length })}</summary>
      <ul>
        {imports.map((importId) => (
          <li key={importId}>
            <PageLink to={`/imports/${importId}`}>{importText("title", { number: importId })}</PageLink>
          </li>
        ))}
        {lines.map((line) => (
          <li key={`${line.importId} ${line.file} ${line.line}`}>
            <LineLink line={line} list={list} />
          </li>
        ))}
      </ul>
      {lines.length > 0 && lines.length < count && <p>{text("gapLinesMore", { count: count - lines.length })}</p>}
    </details>
  );
}

function LineLink({ line, list }: { line: GapLine; list: string }): ReactNode {
  const { may, facility } = useSession();
  const { importId, file, line: number, reason, by, at } = line;
  const place = number === null ? importText("whole", { file }) : importText("place", { file, line: number });
  const to = `/imports/${importId}?kind=${list}&line=${encodeURIComponent(`${file}:${number ?? 0}`)}`;
  return (
    <>
      {may("import-records") ? (
        <PageLink to={to}>
          <Said>{place}</Said>
        </PageLink>
      ) : (
        <Said>{place}</Said>
      )}
      {reason !== null && (
        <>
          {": "}
          <Said>{reason}</Said>{" "}
          <span className="small">
            {text("gapDropped", {
              who: by ?? "",
              when: at === null ? "" : instantWords(new Date(at).toISOString(), facility.zone),
            })}
          </span>
        </>
      )}
    </>
  );
}
