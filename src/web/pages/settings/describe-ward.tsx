import { type ReactNode, useState } from "react";
import { describeWard } from "../../../../shared/api/wards.ts";
import { dayTyped } from "../../parts/form/as-typed.ts";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { LongTextField, TextField } from "../../parts/form/text-field.tsx";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { settingsText } from "../../texts/settings.ts";
import { wardText } from "../../texts/ward-settings.ts";
import { WardFields, wardSaid } from "./ward-fields.tsx";
import type { WardTold } from "./ward-page.tsx";

/** What a ward is from a day on; the form begins with what it is by the last description. */
export function DescribeWard({ ward, done }: { ward: WardTold; done: (words: string) => void }): ReactNode {
  const { me, time, now } = useSession();
  const { wardId, settings, code } = ward;
  const [began] = useState(() => {
    const last = settings.at(-1);
    const { name = code, setting = null } = last ?? {};
    const said = { name, type: last?.type ?? "", setting, beds: last?.beds == null ? "" : String(last.beds) };
    return { ...said, fromDay: time.dayOf(now()) as string, reason: "" };
  });
  const { draft, change, clear } = useDraft(`ward-${wardId}`, began, me.personId);
  const { sending, send } = useRecording(describeWard);
  const faults = faultsOf(sending);
  const record = async (): Promise<void> => {
    const { fromDay, reason } = draft;
    const reply = await send({ wardId, ...wardSaid(draft), fromDay: dayTyped(fromDay), reason });
    if (reply.state !== "answered") return;
    clear();
    done(wardText("described"));
  };
  return (
    <section aria-labelledby="describe">
      <h2 id="describe">{wardText("describe")}</h2>
      <p>{wardText("describeLead")}</p>
      <FieldScope value="describe">
        <RecordForm {...{ sending, record }} button={wardText("describeRecord")} labelledBy="describe">
          <WardFields {...{ draft, change, faults }} />
          <TextField
            pointer="/fromDay"
            label={wardText("fromDay")}
            faults={faults}
            type="date"
            value={draft.fromDay}
            change={(fromDay) => change({ fromDay })}
          />
          <LongTextField
            pointer="/reason"
            label={settingsText("reason")}
            faults={faults}
            value={draft.reason}
            change={(reason) => change({ reason })}
          />
        </RecordForm>
      </FieldScope>
    </section>
  );
}
