import { type ReactNode, useState } from "react";
import { correctStay, voidStay } from "../../../../shared/api/stays.ts";
import { faultsOf } from "../../parts/form/faults.ts";
import { TextField } from "../../parts/form/text-field.tsx";
import { TimeField } from "../../parts/form/time-field.tsx";
import { UpdateForm } from "../../parts/form/update-form.tsx";
import { VoidForm } from "../../parts/form/void-form.tsx";
import { OpensOnce } from "../../parts/opens-once.tsx";
import type { Stay } from "../../parts/patient/patient-record.ts";
import { useSession } from "../../parts/session.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { entryCharted } from "../../texts/entry-time.ts";
import { stayCorrectionText as text } from "../../texts/stay-corrections.ts";
import { changedTexts } from "./changed-texts.ts";

const labels = () => ({
  number: text("number"),
  admittedAt: text("admittedAt"),
  dischargedAt: text("dischargedAt"),
  disposition: text("disposition"),
});

/** Corrects or voids a stay, always with a reason; what it said is kept. */
export function StayCorrections({ stay, again }: { stay: Stay; again: () => void }): ReactNode {
  return (
    <OpensOnce summary={text("stayActs")}>
      <CorrectStay {...{ stay, again }} />
      <VoidStay {...{ stay, again }} />
    </OpensOnce>
  );
}

function CorrectStay({ stay, again }: { stay: Stay; again: () => void }): ReactNode {
  const { time } = useSession();
  const { stayId, version, number, admittedAt, dischargedAt, disposition } = stay;
  const [before] = useState(() => ({
    number,
    admittedAt: entryCharted(time, stay, "admittedAt")(admittedAt),
    dischargedAt: entryCharted(time, stay, "dischargedAt")(dischargedAt),
    disposition: disposition ?? "",
  }));
  const [draft, setDraft] = useState(before);
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(correctStay);
  const record = async (seenVersion: number): Promise<void> => {
    const { disposition: whereTo, ...times } = changedTexts(before, draft);
    const said = whereTo === undefined ? {} : { disposition: whereTo.trim() || null };
    const reply = await send({ stayId, seenVersion, ...times, ...said, reason });
    if (reply.state === "answered") again();
  };
  const faults = faultsOf(sending);
  const of = (name: keyof typeof before) => ({
    ...{ faults, pointer: `/${name}`, label: labels()[name], value: draft[name] },
    change: (value: string) => setDraft({ ...draft, [name]: value }),
  });
  return (
    <UpdateForm
      {...{ sending, record, again }}
      title={text("correctStay")}
      button={text("correctDo")}
      labels={labels()}
      seenVersion={version}
      isReady={reason.trim() !== ""}
      mine={{ ...draft }}
    >
      <TextField {...of("number")} />
      <TimeField {...of("admittedAt")} />
      {dischargedAt !== null && (
        <>
          <TimeField {...of("dischargedAt")} />
          <TextField {...of("disposition")} />
        </>
      )}
      <TextField pointer="/reason" label={text("reason")} faults={faults} value={reason} change={setReason} />
    </UpdateForm>
  );
}

function VoidStay({ stay, again }: { stay: Stay; again: () => void }): ReactNode {
  const { sending, send } = useRecording(voidStay);
  return (
    <VoidForm
      {...{ sending, again, labels: labels() }}
      title={text("voidStay")}
      send={(said) => send({ stayId: stay.stayId, ...said })}
      seenVersion={stay.version}
    />
  );
}
