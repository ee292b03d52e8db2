import { type ReactNode, useState } from "react";
import { recordSpecimen } from "../../../../shared/api/cultures.ts";
import { DraftNotice } from "../../parts/draft-notice.tsx";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { culturesText } from "../../texts/cultures.ts";
import { emptySpecimen, isSaid, organismsOf, specimenInput } from "./specimen-draft.ts";
import { SpecimenFields } from "./specimen-fields.tsx";
import { useKeptWords } from "./use-kept-words.ts";

/** Records a specimen with what the laboratory found so far. What of it decides nothing yet is said at once. */
export function SpecimenForm({ patientId, again }: { patientId: number; again: () => void }): ReactNode {
  const { me } = useSession();
  const { draft, change, clear, wasKept } = useDraft(`specimen-${patientId}`, emptySpecimen, me.personId);
  const [done, setDone] = useState<string | null>(null);
  const { sending, send } = useRecording(recordSpecimen);
  const keepWords = useKeptWords();
  const record = async (): Promise<void> => {
    setDone(null);
    const reply = await send({ patientId, ...specimenInput(draft) });
    if (reply.state !== "answered") return;
    const isKept = await keepWords(draft);
    const open = reply.value.setAside.map((pointer) => openWords(pointer, organismsOf(draft)));
    const recorded =
      open.length === 0 ? culturesText("specimenDone") : culturesText("specimenOpen", { what: open.join("; ") });
    setDone(isKept ? recorded : `${recorded} ${culturesText("groupNotKept")}`);
    change(emptySpecimen);
    clear();
    again();
  };
  return (
    <FieldScope value="specimen">
      <div role="status">{done !== null && <p className="notice done">{done}</p>}</div>
      {wasKept && <DraftNotice drop={() => change(emptySpecimen)} />}
      <RecordForm {...{ sending, record }} button={culturesText("specimenRecord")} isReady={isSaid(draft)}>
        <SpecimenFields {...{ draft, change }} faults={faultsOf(sending)} />
      </RecordForm>
    </FieldScope>
  );
}

/** What a pointer of the answer says: `/organisms/0/name`. */
function openWords(pointer: string, organisms: readonly { readonly name: string }[]): string {
  const [, , at, field] = pointer.split("/");
  const { name = pointer } = organisms[Number(at)] ?? {};
  return culturesText(field === "name" ? "openName" : "openCount", { name });
}
