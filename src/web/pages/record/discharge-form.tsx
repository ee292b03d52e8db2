import { type ReactNode, useState } from "react";
import { dischargePatient } from "../../../../shared/api/stays.ts";
import { faultsOf } from "../../parts/form/faults.ts";
import { TextField } from "../../parts/form/text-field.tsx";
import { TimeField } from "../../parts/form/time-field.tsx";
import { differencesOf, EntryForm } from "../../parts/form/update-form.tsx";
import type { Stay } from "../../parts/patient/patient-record.ts";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { fieldText } from "../../texts/fields.ts";
import { recordText } from "../../texts/patients.ts";

/** What a stay says of its end, as it is compared when somebody else changed it. */
export const dischargeLabels = () => ({
  dischargedAt: recordText("dischargedAt"),
  disposition: recordText("disposition"),
});

interface DischargeProps {
  readonly stay: Stay;
  readonly done: () => void;
  /** Reads the record anew. */
  readonly again: () => void;
  /** Another discharge stands, and the person stays with their own: a stay ends once. What they wrote is kept. */
  readonly takeBackFirst: () => void;
}

/** The end of a stay. */
export function DischargeForm({ stay, done, again, takeBackFirst }: DischargeProps): ReactNode {
  const { me, time, now } = useSession();
  const [began] = useState(() => ({ dischargedAt: time.charted(now()), disposition: "" }));
  const { draft, change, clear } = useDraft(`discharge-${stay.stayId}`, began, me.personId);
  const { sending, send, forget } = useRecording(dischargePatient);
  const record = async (seenVersion: number): Promise<void> => {
    const { dischargedAt, disposition } = draft;
    const current = sending.state === "refused" ? sending.problem.document.current : undefined;
    if (typeof current?.dischargedAt === "string") return takeBackFirst();
    const said = { dischargedAt, disposition: disposition.trim() || null };
    const reply = await send({ stayId: stay.stayId, seenVersion, ...said });
    if (reply.state !== "answered") return;
    clear();
    done();
  };
  const faults = faultsOf(sending);
  return (
    <EntryForm
      {...{ sending, record }}
      button={recordText("dischargeRecord")}
      seenVersion={stay.version}
      again={() => {
        clear();
        forget();
        again();
      }}
      compare={(current) => differencesOf(draft, current, dischargeLabels(), time)}
    >
      <TimeField
        pointer="/dischargedAt"
        label={recordText("dischargedAt")}
        faults={faults}
        value={draft.dischargedAt}
        change={(dischargedAt) => change({ dischargedAt })}
      />
      <TextField
        pointer="/disposition"
        label={recordText("disposition")}
        help={fieldText("optional")}
        faults={faults}
        value={draft.disposition}
        change={(disposition) => change({ disposition })}
      />
    </EntryForm>
  );
}
