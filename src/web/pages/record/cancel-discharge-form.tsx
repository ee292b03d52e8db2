import { type ReactNode, useState } from "react";
import { cancelDischarge } from "../../../../shared/api/stays.ts";
import { faultsOf } from "../../parts/form/faults.ts";
import { TextField } from "../../parts/form/text-field.tsx";
import { differencesOf, EntryForm } from "../../parts/form/update-form.tsx";
import type { Stay } from "../../parts/patient/patient-record.ts";
import { useSession } from "../../parts/session.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { recordText } from "../../texts/patients.ts";
import { dischargeLabels } from "./discharge-form.tsx";

/** The patient is still there: the discharge is taken back, with the reason. */
export function CancelDischargeForm(props: { stay: Stay; done: () => void; again: () => void }): ReactNode {
  const { stay, done, again } = props;
  const { time } = useSession();
  const [reason, setReason] = useState("");
  const { sending, send, forget } = useRecording(cancelDischarge);
  const record = async (seenVersion: number): Promise<void> => {
    const reply = await send({ stayId: stay.stayId, seenVersion, reason });
    if (reply.state === "answered") done();
  };
  return (
    <EntryForm
      {...{ sending, record }}
      button={recordText("cancelDischarge")}
      isReady={reason.trim() !== ""}
      isSmall
      seenVersion={stay.version}
      again={() => {
        forget();
        again();
      }}
      compare={(current) =>
        differencesOf({ dischargedAt: recordText("noDischarge") }, current, dischargeLabels(), time)
      }
    >
      <TextField
        pointer="/reason"
        label={recordText("reason")}
        faults={faultsOf(sending)}
        value={reason}
        change={setReason}
      />
    </EntryForm>
  );
}
