import { type ReactNode, useState } from "react";
import { closeWard } from "../../../../shared/api/wards.ts";
import { dayTyped } from "../../parts/form/as-typed.ts";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { LongTextField, TextField } from "../../parts/form/text-field.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { settingsText } from "../../texts/settings.ts";
import { wardText } from "../../texts/ward-settings.ts";
import type { WardTold } from "./ward-page.tsx";

interface ClosingProps {
  readonly ward: WardTold;
  readonly done: (words: string) => void;
}

/** The last day of a ward. */
export function CloseWard({ ward, done }: ClosingProps): ReactNode {
  const [closedDay, setClosedDay] = useState("");
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(closeWard);
  const record = async (): Promise<void> => {
    const reply = await send({ wardId: ward.wardId, closedDay: dayTyped(closedDay), reason });
    if (reply.state === "answered") done(wardText("closedDone", { day: closedDay }));
  };
  return (
    <Closing title={wardText("close")} lead={wardText("closeLead")}>
      <RecordForm {...{ sending, record }} button={wardText("closeRecord")} labelledBy="close" isSmall>
        <TextField
          pointer="/closedDay"
          label={wardText("closedDay")}
          faults={faultsOf(sending)}
          type="date"
          value={closedDay}
          change={setClosedDay}
        />
        <Reason {...{ reason, setReason, sending }} />
      </RecordForm>
    </Closing>
  );
}

/** A ward that was closed is open after all. */
export function ReopenWard({ ward, done }: ClosingProps): ReactNode {
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(closeWard);
  const record = async (): Promise<void> => {
    const reply = await send({ wardId: ward.wardId, closedDay: null, reason });
    if (reply.state === "answered") done(wardText("openDone"));
  };
  return (
    <Closing title={wardText("reopen")} lead={wardText("reopenLead", { day: ward.closedDay ?? "" })}>
      <RecordForm {...{ sending, record }} button={wardText("reopenRecord")} labelledBy="close" isSmall>
        <Reason {...{ reason, setReason, sending }} />
      </RecordForm>
    </Closing>
  );
}

function Closing({ title, lead, children }: { title: string; lead: string; children: ReactNode }): ReactNode {
  return (
    <section aria-labelledby="close">
      <h2 id="close">{title}</h2>
      <p>{lead}</p>
      <FieldScope value="close">{children}</FieldScope>
    </section>
  );
}

function Reason(props: {
  reason: string;
  setReason: (reason: string) => void;
  sending: Parameters<typeof faultsOf>[0];
}): ReactNode {
  const { reason, setReason, sending } = props;
  return (
    <LongTextField
      pointer="/reason"
      label={settingsText("reason")}
      faults={faultsOf(sending)}
      value={reason}
      change={setReason}
    />
  );
}
