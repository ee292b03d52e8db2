import { type ReactNode, useState } from "react";
import { mergePatients } from "../../../../shared/api/patients.ts";
import { ProblemNotice } from "../../parts/form/problem-notice.tsx";
import { PatientFinder } from "../../parts/patient/patient-finder.tsx";
import type { PatientRecord } from "../../parts/patient/patient-record.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { recordText } from "../../texts/patients.ts";

/** Another record turns out to be the same person: find it, look, merge. */
export function MergeSection({ record, again }: { record: PatientRecord; again: () => void }): ReactNode {
  const [others, setOthers] = useState<readonly { patientId: number; identifier: string }[]>([]);
  const { sending, send } = useRecording(mergePatients);
  const { patientId } = record.patient;
  const merge = async (fromId: number): Promise<void> => {
    const reply = await send({ patientId, fromId });
    if (reply.state !== "answered") return;
    setOthers([]);
    again();
  };
  return (
    <details className="on-screen">
      <summary>{recordText("merge")}</summary>
      <p>{recordText("mergeLead")}</p>
      <ProblemNotice sending={sending} sendAgain={() => others[0] && void merge(others[0].patientId)} />
      <PatientFinder
        id="merge"
        label={recordText("mergeNumber")}
        button={recordText("mergeFind")}
        none={<p className="notice">{recordText("mergeNone")}</p>}
        take={(found) => {
          const useful = found.filter((one) => one.patientId !== patientId);
          setOthers(useful);
          return useful.length > 0;
        }}
      />
      {others.map((other) => (
        <button type="button" key={other.patientId} onClick={() => void merge(other.patientId)}>
          {recordText("mergeDo", { number: other.identifier })}
        </button>
      ))}
    </details>
  );
}
