import { type ReactNode, useState } from "react";
import { addOwnBaseline } from "../../../../shared/api/baselines.ts";
import { monthTyped } from "../../parts/form/as-typed.ts";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { baselinesText as text } from "../../texts/baselines.ts";

/** Takes the wards' own counts of months that are over as a baseline. */
export function AddOwnBaseline({ done }: { done: () => void }): ReactNode {
  const { me } = useSession();
  const [began] = useState({ name: "", fromMonth: "", toMonth: "" });
  const { draft, change, clear } = useDraft("own-baseline", began, me.personId);
  const { sending, send } = useRecording(addOwnBaseline);
  const faults = faultsOf(sending);
  const record = async (): Promise<void> => {
    const { name, fromMonth, toMonth } = draft;
    const reply = await send({ name, fromMonth: monthTyped(fromMonth), toMonth: monthTyped(toMonth) });
    if (reply.state !== "answered") return;
    clear();
    done();
  };
  return (
    <section aria-labelledby="own" className="on-screen">
      <h2 id="own">{text("own")}</h2>
      <p>{text("ownLead")}</p>
      <FieldScope value="own">
        <RecordForm {...{ sending, record }} button={text("ownRecord")} labelledBy="own">
          <TextField
            pointer="/name"
            label={text("name")}
            faults={faults}
            value={draft.name}
            change={(name) => change({ name })}
          />
          {(["fromMonth", "toMonth"] as const).map((name) => (
            <TextField
              key={name}
              pointer={`/${name}`}
              label={text(name === "fromMonth" ? "ownFrom" : "ownTo")}
              help={text("monthHelp")}
              faults={faults}
              type="month"
              value={draft[name]}
              change={(value) => change({ [name]: value })}
            />
          ))}
        </RecordForm>
      </FieldScope>
    </section>
  );
}
