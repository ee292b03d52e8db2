import { type ReactNode, useState } from "react";
import { watchWard } from "../../../../shared/api/scope.ts";
import { type EditionId, editionNames } from "../../../../shared/edition-words.ts";
import { monthTyped, numberTyped } from "../../parts/form/as-typed.ts";
import { SelectField } from "../../parts/form/choice-field.tsx";
import { faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { scopeText } from "../../texts/settings.ts";

/** Puts a ward under surveillance for some months; `edition` is the one that the form begins with. */
export function WatchWard({ edition, done }: { edition: string; done: () => void }): ReactNode {
  const { me, wards, time, now } = useSession();
  const [began] = useState(() => ({
    ...{ wardId: null as string | null, fromMonth: time.dayOf(now()).slice(0, 7), toMonth: "", edition },
  }));
  const { draft, change, clear } = useDraft("watch", began, me.personId);
  const { sending, send } = useRecording(watchWard);
  const faults = faultsOf(sending);
  const record = async (): Promise<void> => {
    const reply = await send({
      wardId: numberTyped(draft.wardId ?? ""),
      fromMonth: monthTyped(draft.fromMonth),
      toMonth: draft.toMonth.trim() === "" ? null : monthTyped(draft.toMonth),
      // What the list does not hold goes out as it is, so that the server tells the fault at its field.
      edition: draft.edition as EditionId,
    });
    if (reply.state !== "answered") return;
    clear();
    done();
  };
  return (
    <RecordForm {...{ sending, record }} button={scopeText("record")} labelledBy="watch">
      <SelectField
        pointer="/wardId"
        label={scopeText("ward")}
        faults={faults}
        choices={wards.map(({ wardId, code }) => ({ value: String(wardId), label: code }))}
        value={draft.wardId}
        change={(wardId) => change({ wardId })}
        empty={scopeText("choose")}
      />
      {(["fromMonth", "toMonth"] as const).map((name) => (
        <TextField
          key={name}
          pointer={`/${name}`}
          label={scopeText(name)}
          help={scopeText(name === "toMonth" ? "toHelp" : "monthHelp")}
          faults={faults}
          type="month"
          value={draft[name]}
          change={(value) => change({ [name]: value })}
        />
      ))}
      <SelectField
        pointer="/edition"
        label={scopeText("edition")}
        faults={faults}
        choices={Object.entries(editionNames).map(([value, label]) => ({ value, label }))}
        value={draft.edition}
        change={(edition) => change({ edition: edition ?? "" })}
      />
    </RecordForm>
  );
}
