import type { ReactNode } from "react";
import { readEvents } from "../../../../shared/api/events.ts";
import type { Month } from "../../../../shared/day.ts";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { cellOf, daysOfMonth } from "../../parts/words.ts";
import { infectionsText as text } from "../../texts/infections.ts";

/** What is told of an event of a ward. */
const shown = ["date", "patient", "criterion", "catheter", "organisms", "work", "disagreement"] as const;

/** The events of a ward and month, one a row; each opens to its case for who works on them. The view is recorded. */
export function WardEvents({ month, code }: { month: Month; code: string }): ReactNode {
  const { may } = useSession();
  const asked = useAnswer(readEvents, daysOfMonth(month));
  return (
    <ShowAnswer asked={asked} what={text("eventsWhat")}>
      {({ sheet, caseIds }) => {
        const rows = sheet.rows.flatMap((row, at) =>
          cellOf(sheet, row, "ward") === code ? [{ row, caseId: caseIds[at] ?? null, at }] : [],
        );
        return (
          <table className="ledger inner">
            <caption>{text("eventsCaption", { ward: code })}</caption>
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
                    <td key={key}>
                      {key === "criterion" && caseId !== null && may("judge-cases") ? (
                        <PageLink to={`/cases/${caseId}`}>
                          <Said>{cellOf(sheet, row, key)}</Said>
                        </PageLink>
                      ) : (
                        <Said>{cellOf(sheet, row, key) ?? text("notShown")}</Said>
                      )}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        );
      }}
    </ShowAnswer>
  );
}
