import { type ReactNode, useState } from "react";
import { removeCatheter } from "../../../../shared/api/catheters.ts";
import { DraftNotice } from "../../parts/draft-notice.tsx";
import { faultsOf } from "../../parts/form/faults.ts";
import { EntryForm } from "../../parts/form/update-form.tsx";
import type { Catheter } from "../../parts/patient/patient-record.ts";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { removalText } from "../../texts/removal.ts";
import { removalDifferences } from "./removal-differences.ts";
import { RemovalDone } from "./removal-done.tsx";
import { emptyRemoval, removalFaults, removalInput } from "./removal-draft.ts";
import { RemovalFields } from "./removal-fields.tsx";

interface FormProps {
  readonly catheter: Catheter;
  readonly patientId: number;
  readonly wardId: number | null;
}

/** One page, because a removal takes a minute: when, the balloon, whole or not, why. */
export function RemovalForm(props: FormProps): ReactNode {
  const { catheter, patientId, wardId } = props;
  const { me, time, now } = useSession();
  const [began] = useState(() => emptyRemoval(time.charted(now())));
  const { draft, change, clear, wasKept } = useDraft(`removal-${catheter.catheterId}`, began, me.personId);
  const { sending, send, forget } = useRecording(removeCatheter);
  const record = async (seenVersion: number, confirm = draft.confirm): Promise<void> => {
    const reply = await send(removalInput({ ...draft, confirm }, catheter.catheterId, seenVersion));
    if (reply.state === "answered") clear();
  };
  if (sending.state === "answered") return <RemovalDone {...{ draft, catheter, patientId, wardId }} />;
  if (catheter.removedAt !== null || catheter.removedAfterAt !== null)
    return <p className="notice">{removalText("alreadyOut")}</p>;
  const confirm = (pointers: readonly string[]): void => {
    change({ confirm: [...draft.confirm, ...pointers] });
    void record(catheter.version, [...draft.confirm, ...pointers]);
  };
  return (
    <>
      {wasKept && <DraftNotice drop={() => change(began)} />}
      <EntryForm
        {...{ sending, record, confirm }}
        button={removalText("record")}
        seenVersion={catheter.version}
        compare={(current) => removalDifferences(draft, current, time)}
        again={() => {
          clear();
          forget();
          location.reload();
        }}
      >
        <RemovalFields
          {...{ draft, change, catheter }}
          faults={[...faultsOf(sending), ...removalFaults(draft, catheter)]}
        />
      </EntryForm>
    </>
  );
}
