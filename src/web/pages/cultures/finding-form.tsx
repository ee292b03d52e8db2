import { type ReactNode, useState } from "react";
import { recordFinding } from "../../../../shared/api/findings.ts";
import type { FindingKind } from "../../../../shared/case-words.ts";
import { DraftNotice } from "../../parts/draft-notice.tsx";
import { dayTyped } from "../../parts/form/as-typed.ts";
import { SelectField } from "../../parts/form/choice-field.tsx";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { culturesText } from "../../texts/cultures.ts";
import { findingsText as text } from "../../texts/findings.ts";
import { cellsTyped, FindingFields, kinds } from "./finding-fields.tsx";

/** Records what was found beside cultures and signs. */
export function FindingForm({ patientId, again }: { patientId: number; again: () => void }): ReactNode {
  const { me, time, now } = useSession();
  const [began] = useState(() => ({
    ...{ kind: null as FindingKind | null, day: time.dayOf(now()) as string, time: "", present: true, cells: "" },
  }));
  const { draft, change, clear, wasKept } = useDraft(`finding-${patientId}`, began, me.personId);
  const [isDone, setDone] = useState(false);
  const { sending, send } = useRecording(recordFinding);
  const record = async (): Promise<void> => {
    setDone(false);
    const { kind, day, time: hour, present } = draft;
    if (kind === null) return;
    const cells = kind === "pyuria" ? cellsTyped(draft.cells) : null;
    const reply = await send({
      ...{ patientId, finding: kind, day: dayTyped(day), present },
      ...(hour.trim() === "" ? {} : { time: hour.trim() }),
      ...(cells === null ? {} : { cellsPerMm3: cells }),
    });
    if (reply.state !== "answered") return;
    setDone(true);
    change({ ...began, day });
    clear();
    again();
  };
  const faults = faultsOf(sending);
  return (
    <FieldScope value="finding">
      <div role="status">{isDone && <p className="notice done">{text("done")}</p>}</div>
      <p className="help">{text("lead")}</p>
      {wasKept && <DraftNotice drop={() => change(began)} />}
      <RecordForm {...{ sending, record }} button={text("recordIt")} isReady={draft.kind !== null}>
        <SelectField
          {...{ faults, pointer: "/finding", label: text("what"), choices: kinds, value: draft.kind }}
          change={(kind) => change({ kind })}
          empty={culturesText("groupOpen")}
        />
        <FindingFields {...{ draft, change, faults }} kind={draft.kind} />
      </RecordForm>
    </FieldScope>
  );
}
