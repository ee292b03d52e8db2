import type { ReactNode } from "react";
import type { readEvents } from "../../../shared/api/events.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import type { Sheet, SheetCell } from "../../../shared/sheet.ts";
import { infectionsText as text } from "../texts/infections.ts";
import { PageLink } from "./page-link.tsx";
import { Said } from "./said.tsx";
import { useSession } from "./session.tsx";
import { cellOf } from "./words.ts";

const whole: ReadonlySet<string> = new Set(["date", "ward", "patient"]);

function classOf(key: string): string | undefined {
  if (whole.has(key)) return "whole";
  return key === "criterion" ? "several-words" : undefined;
}

/** A cell; the month stands for the day of an event whose patient the viewer may not see. */
function told(sheet: Sheet, row: readonly SheetCell[], key: string): SheetCell {
  return cellOf(sheet, row, key) ?? (key === "date" ? cellOf(sheet, row, "month") : null);
}

/** Events, one a row; each opens to its case for who works on them. Cells that the viewer may not see say so. */
export function EventsTable(props: {
  answer: OutputOf<typeof readEvents>;
  caption: string;
  /** The columns that are shown. */
  shown: readonly string[];
  /** The ward whose events are shown; without one, those of all. */
  ward?: string;
  className: string;
}): ReactNode {
  const { caption, shown, ward, className } = props;
  const { sheet, caseIds } = props.answer;
  const { may } = useSession();
  const rows = sheet.rows.flatMap((row, at) =>
    ward === undefined || cellOf(sheet, row, "ward") === ward ? [{ row, caseId: caseIds[at] ?? null, at }] : [],
  );
  return (
    <table className={className}>
      <caption>
        <Said>{caption}</Said>
      </caption>
      <thead>
        <tr>
          {shown.map((key) => (
            <th key={key} scope="col">
              <Said>{sheet.columns.find((column) => column.key === key)?.label ?? key}</Said>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ row, caseId, at }) => (
          <tr key={at}>
            {shown.map((key) => (
              <td key={key} className={classOf(key)}>
                {key === "criterion" && caseId !== null && may("judge-cases") ? (
                  <PageLink to={`/cases/${caseId}`}>
                    <Said>{cellOf(sheet, row, key)}</Said>
                  </PageLink>
                ) : (
                  <Said>{told(sheet, row, key) ?? text("notShown")}</Said>
                )}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
