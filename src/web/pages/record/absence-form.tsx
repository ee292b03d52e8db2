import { type ReactNode, useState } from "react";
import { recordAbsence } from "../../../../shared/api/moves.ts";
import { absenceKind, absenceKinds } from "../../../../shared/vocabulary.ts";
import { ChoiceField } from "../../parts/form/choice-field.tsx";
import { faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { TimeField } from "../../parts/form/time-field.tsx";
import { useSession } from "../../parts/session.tsx";
import { Term } from "../../parts/term.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { recordText } from "../../texts/patients.ts";

/** Time off the wards inside a stay, with its kind or without. */
export function AbsenceForm({ stayId, done }: { stayId: number; done: () => void }): ReactNode {
  const { me, time, now } = useSession();
  const [began] = useState(() => ({ leftAt: time.charted(now()), backAt: "", kind: "procedure" }));
  const { draft, change, clear } = useDraft(`absence-${stayId}`, began, me.personId);
  const { sending, send } = useRecording(recordAbsence);
  const record = async (): Promise<void> => {
    const { leftAt, backAt, kind } = draft;
    const known = absenceKind.options.find((one) => one === kind) ?? null;
    const reply = await send({ stayId, leftAt, backAt: backAt === "" ? null : backAt, kind: known });
    if (reply.state !== "answered") return;
    clear();
    done();
  };
  const faults = faultsOf(sending);
  const kinds = absenceKind.options.map((value) => ({ value: value as string, label: absenceKinds[value] }));
  return (
    <RecordForm {...{ sending, record }} button={recordText("absenceRecord")}>
      <ChoiceField
        pointer="/kind"
        label={recordText("kind")}
        help={<Term name="absence" />}
        faults={faults}
        choices={[...kinds, { value: "unknown", label: recordText("kindUnknown") }]}
        value={draft.kind}
        change={(kind) => change({ kind })}
      />
      <TimeField
        pointer="/leftAt"
        label={recordText("leftAt")}
        faults={faults}
        value={draft.leftAt}
        change={(leftAt) => change({ leftAt })}
      />
      <TimeField
        pointer="/backAt"
        label={recordText("backAt")}
        help={recordText("backHelp")}
        faults={faults}
        value={draft.backAt}
        change={(backAt) => change({ backAt })}
      />
    </RecordForm>
  );
}
