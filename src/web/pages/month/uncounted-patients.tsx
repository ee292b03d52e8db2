import type { ReactNode } from "react";
import { readUncountedDays } from "../../../../shared/api/uncounted-days.ts";
import type { Month } from "../../../../shared/day.ts";
import { OpensOnce } from "../../parts/opens-once.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { longDayWords } from "../../parts/words.ts";
import { monthText as text } from "../../texts/month.ts";

interface UncountedProps {
  readonly month: Month;
  readonly kind: "no-ward" | "outpatient";
  readonly wardId: number | null;
}

/** The patients whose patient-days may be missing, each with the way to the record; read when it is opened. */
export function UncountedPatients(props: UncountedProps): ReactNode {
  return (
    <OpensOnce summary={text("uncountedOpen")}>
      <UncountedRows {...props} />
    </OpensOnce>
  );
}

function UncountedRows({ month, kind, wardId }: UncountedProps): ReactNode {
  const asked = useAnswer(readUncountedDays, { month });
  return (
    <ShowAnswer asked={asked} what={text("uncountedWhat")}>
      {({ days }) => (
        <ul>
          {days
            .filter((one) => one.kind === kind && one.wardId === wardId)
            .map(({ day, patientId, identifier }) => (
              <li key={`${day} ${patientId}`}>
                {longDayWords(day)}:{" "}
                <PageLink to={`/patients/${patientId}`}>
                  <Said>{identifier}</Said>
                </PageLink>
              </li>
            ))}
        </ul>
      )}
    </ShowAnswer>
  );
}
