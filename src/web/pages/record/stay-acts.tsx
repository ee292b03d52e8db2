import { type ReactNode, useState } from "react";
import type { PatientRecord, Stay } from "../../parts/patient/patient-record.ts";
import { recordText } from "../../texts/patients.ts";
import { AbsenceForm } from "./absence-form.tsx";
import { CancelDischargeForm } from "./cancel-discharge-form.tsx";
import { DischargeForm } from "./discharge-form.tsx";
import { MoveForm } from "./move-form.tsx";

/** What can be recorded of a stay, each behind its own words; what was recorded is told and the record read anew. */
export function StayActs(props: { record: PatientRecord; stay: Stay; again: () => void }): ReactNode {
  const { stay, again } = props;
  const [isDone, setDone] = useState(0);
  const [isToTakeBack, setToTakeBack] = useState(false);
  const done = (): void => {
    setToTakeBack(false);
    setDone((count) => count + 1);
    again();
  };
  const takeBackFirst = (): void => {
    setToTakeBack(true);
    again();
  };
  return (
    <section aria-labelledby="acts" className="on-screen">
      <h2 id="acts">{recordText("acts")}</h2>
      <div role="status">
        {isToTakeBack ? (
          <p className="notice">{recordText("takeBackFirst")}</p>
        ) : (
          isDone > 0 && <p className="notice done">{recordText("recorded")}</p>
        )}
      </div>
      {stay.dischargedAt === null ? (
        <>
          <Act title={recordText("move")} key={`move-${isDone}`}>
            <MoveForm stayId={stay.stayId} done={done} />
          </Act>
          <Act title={recordText("absence")} key={`absence-${isDone}`}>
            <AbsenceForm stayId={stay.stayId} done={done} />
          </Act>
          <Act title={recordText("discharge")} key={`discharge-${isDone}`}>
            <DischargeForm {...{ stay, done, again, takeBackFirst }} />
          </Act>
        </>
      ) : (
        <Act title={recordText("cancelDischarge")} key={`cancel-${isDone}`}>
          <CancelDischargeForm {...{ stay, done, again }} />
        </Act>
      )}
    </section>
  );
}

function Act({ title, children }: { title: string; children: ReactNode }): ReactNode {
  return (
    <details name="act">
      <summary>{title}</summary>
      {children}
    </details>
  );
}
