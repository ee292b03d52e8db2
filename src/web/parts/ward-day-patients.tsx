import type { ReactNode } from "react";
import { readWardDay } from "../../../shared/api/ward-days.ts";
import type { Day } from "../../../shared/day.ts";
import { ShowAnswer } from "./show-answer.tsx";
import { useAnswer } from "./use-answer.ts";
import { longDayWords } from "./words.ts";

/** The patients behind a ward day. The server writes down that they were seen. */
export function WardDayPatients({ wardId, code, day }: { wardId: number; code: string; day: Day }): ReactNode {
  const asked = useAnswer(readWardDay, { wardId, day });
  return (
    <ShowAnswer asked={asked} what="the patients">
      {({ patients }) => (
        <table className="ledger inner">
          <caption>
            Patients on {code} at the census of {longDayWords(day)}. This view was recorded.
          </caption>
          <thead>
            <tr>
              <th scope="col">Patient</th>
              <th scope="col">Urinary catheter</th>
            </tr>
          </thead>
          <tbody>
            {patients.map(({ patientId, identifier, catheter }) => (
              <tr key={patientId}>
                <th scope="row">{identifier}</th>
                <td>{catheter ? "yes, in place" : "no"}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </ShowAnswer>
  );
}
