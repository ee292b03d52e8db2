import type { ReactNode } from "react";
import type { PatientRecord, Stay, WardStay } from "../../parts/patient/patient-record.ts";
import { useSession } from "../../parts/session.tsx";
import { dayWords } from "../../parts/words.ts";
import { uncountedText as text } from "../../texts/uncounted.ts";
import { MoveForm } from "./move-form.tsx";

type Uncounted = PatientRecord["uncounted"];

/** The days of a stay on which the patient may have been counted on no unit, and how each is resolved. */
export function UncountedDays(props: {
  uncounted: Uncounted;
  stay: Stay;
  wardStays: readonly WardStay[];
  again: () => void;
}): ReactNode {
  const { uncounted, stay, wardStays, again } = props;
  const { may, time } = useSession();
  const missing = uncounted.find(({ kind }) => kind === "no-ward");
  if (uncounted.length === 0) return null;
  const leftBy = (day: string): number =>
    wardStays
      .flatMap(({ endAt, voidReason }) => (endAt === null || voidReason !== null ? [] : [endAt]))
      .filter((endAt) => time.charted(endAt).slice(0, 10) <= day)
      .reduce((latest, endAt) => Math.max(latest, endAt), stay.admittedAt);
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
      {missing && may("record-care") && (
        <details>
          <summary>{text("missingMove")}</summary>
          <MoveForm stayId={stay.stayId} from={leftBy(missing.firstDay)} done={again} />
        </details>
      )}
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
