import { type ReactNode, useState } from "react";
import { unmergePatients } from "../../../../shared/api/patients.ts";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import type { PatientRecord } from "../../parts/patient/patient-record.ts";
import { WithNames } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { recordText } from "../../texts/patients.ts";

type Merge = PatientRecord["merges"][number];

/** The merges that stand, each with its undo for whom it is; says that one was taken back when it is gone. */
export function MergesList({ record, again }: { record: PatientRecord; again: () => void }): ReactNode {
  const { may, time } = useSession();
  const [isDone, setDone] = useState(false);
  const done = (): void => {
    setDone(true);
    again();
  };
  return (
    <>
      <div role="status">{isDone && <p className="notice done">{recordText("unmerged")}</p>}</div>
      {record.merges.length > 0 && (
        <section aria-labelledby="merges">
          <h2 id="merges">{recordText("merges")}</h2>
          <WithNames what={recordText("merges")}>
            {(nameOf) => (
              <ul>
                {record.merges.map((merge) => (
                  <li key={merge.mergeId}>
                    <Said>
                      {recordText("mergeLine", {
                        ...{ from: merge.fromIdentifier, into: merge.intoIdentifier },
                        ...{ when: time.short(merge.mergedAt), who: nameOf(merge.mergedBy) },
                      })}
                    </Said>
                    {may("merge-patients") && <Undo merge={merge} done={done} />}
                  </li>
                ))}
              </ul>
            )}
          </WithNames>
        </section>
      )}
    </>
  );
}

function Undo({ merge, done }: { merge: Merge; done: () => void }): ReactNode {
  const { mergeId, intoId: patientId } = merge;
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(unmergePatients);
  const record = async (): Promise<void> => {
    const reply = await send({ patientId, mergeId, reason });
    if (reply.state === "answered") done();
  };
  return (
    <details className="on-screen">
      <summary>{recordText("unmerge")}</summary>
      <p>{recordText("unmergeLead")}</p>
      <FieldScope value={`merge-${mergeId}`}>
        <RecordForm {...{ sending, record }} button={recordText("unmergeDo")} isReady={reason.trim() !== ""} isSmall>
          <TextField
            pointer="/reason"
            label={recordText("reason")}
            faults={faultsOf(sending)}
            value={reason}
            change={setReason}
          />
        </RecordForm>
      </FieldScope>
    </details>
  );
}
