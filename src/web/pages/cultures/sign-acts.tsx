import { type ReactNode, useState } from "react";
import { correctSign, voidSign } from "../../../../shared/api/signs.ts";
import type { InputOf } from "../../../../shared/endpoint.ts";
import { dayTyped } from "../../parts/form/as-typed.ts";
import { faultsOf } from "../../parts/form/faults.ts";
import { TextField } from "../../parts/form/text-field.tsx";
import { UpdateForm } from "../../parts/form/update-form.tsx";
import { VoidForm } from "../../parts/form/void-form.tsx";
import { useSession } from "../../parts/session.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { culturesText } from "../../texts/cultures.ts";
import type { Sign } from "./culture-rows.ts";
import { SignFields } from "./sign-fields.tsx";
import { measured, type SignDraft } from "./signs-draft.ts";

/** Corrects or voids a sign, always with a reason; what it said is kept. */
export function SignActs({ sign, again }: { sign: Sign; again: () => void }): ReactNode {
  return (
    <details className="on-screen">
      <summary>{culturesText("change")}</summary>
      <CorrectSign {...{ sign, again }} />
      <VoidSign {...{ sign, again }} />
    </details>
  );
}

type Draft = SignDraft & { readonly day: string };

function draftOf({ day, at, finding, temperature, otherCause }: Sign, clock: (at: number) => string): Draft {
  const unit = temperature?.endsWith("F") ? "F" : "C";
  const degrees = temperature?.replace(/\s*°[CF]$/, "") ?? "";
  return { day, finding, time: at === null ? "" : clock(at), temperature: degrees, unit, otherCause };
}

/** What was changed of a sign; what was not touched is not sent. A sign that was not there has no temperature. */
function changedOf(before: Draft, after: Draft): Partial<InputOf<typeof correctSign>> {
  const { day, time, finding, otherCause } = after;
  const degrees = ({ finding: found, temperature, unit }: Draft) =>
    found === "present" && temperature !== "" ? measured(temperature, unit) : null;
  return {
    ...(day === before.day ? {} : { day: dayTyped(day) }),
    ...(time === before.time ? {} : { time: time || null }),
    ...(finding === before.finding || finding === null ? {} : { finding }),
    ...(degrees(before) === degrees(after) ? {} : { temperature: degrees(after) }),
    ...(otherCause === before.otherCause ? {} : { otherCause }),
  };
}

function CorrectSign({ sign, again }: { sign: Sign; again: () => void }): ReactNode {
  const { time } = useSession();
  const [before] = useState(() => draftOf(sign, time.clock));
  const [draft, setDraft] = useState(before);
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(correctSign);
  const change = (part: Partial<Draft>) => setDraft({ ...draft, ...part });
  const { signId } = sign;
  const record = async (seenVersion: number, confirm: readonly string[] = []): Promise<void> => {
    const reply = await send({ signId, seenVersion, ...changedOf(before, draft), reason, confirm: [...confirm] });
    if (reply.state === "answered") again();
  };
  const faults = faultsOf(sending);
  return (
    <UpdateForm
      {...{ sending, record, again }}
      title={culturesText("correctSign")}
      button={culturesText("correctDo")}
      seenVersion={sign.version}
      isReady={reason.trim() !== ""}
      mine={{
        day: draft.day,
        finding: draft.finding,
        temperature: changedOf(before, draft).temperature ?? sign.temperature,
      }}
      labels={{
        ...{ day: culturesText("day"), finding: culturesText("finding"), temperature: culturesText("temperature") },
      }}
      confirm={(pointers) => void record(sign.version, pointers)}
    >
      <TextField
        {...{ faults }}
        pointer="/day"
        label={culturesText("day")}
        type="date"
        value={draft.day}
        change={(day) => change({ day })}
      />
      <SignFields {...{ draft, change, faults }} sign={sign.sign} at="" isOptional={false} />
      <TextField pointer="/reason" label={culturesText("reason")} faults={faults} value={reason} change={setReason} />
    </UpdateForm>
  );
}

function VoidSign({ sign, again }: { sign: Sign; again: () => void }): ReactNode {
  const { sending, send } = useRecording(voidSign);
  return (
    <VoidForm
      {...{ sending, again }}
      title={culturesText("voidIt")}
      send={(said) => send({ signId: sign.signId, ...said })}
      seenVersion={sign.version}
      labels={{ day: culturesText("day"), temperature: culturesText("temperature") }}
    />
  );
}
