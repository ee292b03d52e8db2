import type { ReactNode } from "react";
import { readWardDay } from "../../../../shared/api/ward-days.ts";
import type { Day } from "../../../../shared/day.ts";
import { Said } from "../../parts/said.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { longDayWords } from "../../parts/words.ts";
import { monthText as text } from "../../texts/month.ts";

/** The patients behind a ward day. The server writes down that they were seen. */
export function WardDayPatients({ wardId, code, day }: { wardId: number; code: string; day: Day }): ReactNode {
  const asked = useAnswer(readWardDay, { wardId, day });
  return (
    <ShowAnswer asked={asked} what={text("patientsWhat")}>
      {({ patients }) => (
        <table className="ledger inner">
          <caption>{text("patientsCaption", { ward: code, day: longDayWords(day) })}</caption>
          <thead>
            <tr>
              <th scope="col">{text("patient")}</th>
              <th scope="col">{text("catheter")}</th>
            </tr>
          </thead>
          <tbody>
            {patients.map(({ patientId, identifier, catheter }) => (
              <tr key={patientId}>
                <th scope="row">
                  <Said>{identifier}</Said>
                </th>
                <td>{text(catheter ? "yes" : "no")}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </ShowAnswer>
  );
}
