import { type ReactNode, useState } from "react";
import { addWard } from "../../../../shared/api/wards.ts";
import { dayTypedOrNull } from "../../parts/form/as-typed.ts";
import { faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { wardText } from "../../texts/ward-settings.ts";
import { DoneNotice } from "./done-notice.tsx";
import { SettingsFrame } from "./settings-frame.tsx";
import { type WardDraft, WardFields, wardSaid } from "./ward-fields.tsx";
import { WardTable } from "./ward-table.tsx";

/** The wards, and a new one for whom it is. */
export function WardsPage(): ReactNode {
  const { may, renew } = useSession();
  const [added, setAdded] = useState(0);
  const done = (): void => {
    setAdded((count) => count + 1);
    renew();
  };
  return (
    <SettingsFrame title={wardText("title")}>
      <DoneNotice words={added > 0 ? wardText("added") : null} />
      <WardTable />
      {may("set-wards") && (
        <section aria-labelledby="add" className="on-screen">
          <h2 id="add">{wardText("add")}</h2>
          <AddWard key={added} done={done} />
        </section>
      )}
    </SettingsFrame>
  );
}

interface NewWard extends WardDraft {
  readonly code: string;
  readonly openedDay: string;
}

const nothing: NewWard = { code: "", name: "", type: "", setting: null, beds: "", openedDay: "" };

function AddWard({ done }: { done: () => void }): ReactNode {
  const { me } = useSession();
  const { draft, change, clear } = useDraft("ward-new", nothing, me.personId);
  const { sending, send } = useRecording(addWard);
  const faults = faultsOf(sending);
  const record = async (): Promise<void> => {
    const { code, openedDay } = draft;
    const reply = await send({ code, ...wardSaid(draft), openedDay: dayTypedOrNull(openedDay) });
    if (reply.state !== "answered") return;
    clear();
    done();
  };
  return (
    <RecordForm {...{ sending, record }} button={wardText("addRecord")} labelledBy="add">
      <TextField
        pointer="/code"
        label={wardText("code")}
        help={wardText("codeHelp")}
        faults={faults}
        value={draft.code}
        change={(code) => change({ code })}
      />
      <WardFields {...{ draft, change, faults }} />
      <TextField
        pointer="/openedDay"
        label={wardText("openedDay")}
        help={wardText("openedHelp")}
        faults={faults}
        type="date"
        value={draft.openedDay}
        change={(openedDay) => change({ openedDay })}
      />
    </RecordForm>
  );
}
