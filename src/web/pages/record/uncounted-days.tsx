import type { ReactNode } from "react";
import type { PatientRecord } from "../../parts/patient/patient-record.ts";
import { useSession } from "../../parts/session.tsx";
import { dayWords } from "../../parts/words.ts";
import { uncountedText as text } from "../../texts/uncounted.ts";

type Uncounted = PatientRecord["uncounted"];

/** The days of a stay on which the patient may have been counted on no unit, and how each is resolved. */
export function UncountedDays({ uncounted }: { uncounted: Uncounted }): ReactNode {
  if (uncounted.length === 0) return null;
  return (
    <div className="notice">
      <p>
        <strong>{text("title")}</strong>
      </p>
      <ul>
        {uncounted.map((run) => (
          <li key={`${run.kind} ${run.firstDay}`}>
            <Run run={run} />
          </li>
        ))}
      </ul>
    </div>
  );
}

function Run({ run }: { run: Uncounted[number] }): ReactNode {
  const { wardCode } = useSession();
  const { kind, firstDay, lastDay, days: count, lastWardId, nextWardId } = run;
  const first = dayWords(firstDay);
  const when = count === 1 ? first : text("range", { first, last: dayWords(lastDay) });
  const units = [lastWardId, nextWardId].flatMap((id) => (id === null ? [] : [wardCode(id)]));
  return (
    <>
      {text(kind === "no-ward" ? "noUnit" : "area", { when, count })}{" "}
      {units.length > 0 && text("stake", { units: [...new Set(units)].join(", ") })}{" "}
      {text(kind === "no-ward" ? "noUnitRemedy" : "areaRemedy")}
    </>
  );
}
