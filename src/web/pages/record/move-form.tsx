import { type ReactNode, useState } from "react";
import { movePatient } from "../../../../shared/api/moves.ts";
import { faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { TimeField } from "../../parts/form/time-field.tsx";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { fieldText } from "../../texts/fields.ts";
import { recordText } from "../../texts/patients.ts";
import { WardChoice } from "./ward-choice.tsx";

/** From one ward or bed to another, which may be any ward of the facility; `from`: when a missing move began, as known. */
export function MoveForm(props: { stayId: number; from?: number; done: () => void }): ReactNode {
  const { stayId, from, done } = props;
  const { me, time, now } = useSession();
  const [began] = useState(() => ({ movedAt: time.charted(from ?? now()), to: null as string | null, bed: "" }));
  const name = from === undefined ? "move" : "missing-move";
  const { draft, change, clear } = useDraft(`${name}-${stayId}`, began, me.personId);
  const { sending, send } = useRecording(movePatient);
  const record = async (): Promise<void> => {
    const { movedAt, to, bed } = draft;
    const reply = await send({ stayId, movedAt, toWardId: Number(to), bed: bed.trim() || null });
    if (reply.state !== "answered") return;
    clear();
    done();
  };
  const faults = faultsOf(sending);
  return (
    <RecordForm {...{ sending, record }} button={recordText("moveRecord")} isReady={draft.to !== null}>
      <WardChoice label={recordText("toWard")} faults={faults} value={draft.to} change={(to) => change({ to })} />
      <TextField
        pointer="/bed"
        label={recordText("bed")}
        help={fieldText("optional")}
        faults={faults}
        value={draft.bed}
        change={(bed) => change({ bed })}
      />
      <TimeField
        pointer="/movedAt"
        label={recordText("movedAt")}
        faults={faults}
        value={draft.movedAt}
        change={(movedAt) => change({ movedAt })}
      />
    </RecordForm>
  );
}
