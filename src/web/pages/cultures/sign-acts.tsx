import { type ReactNode, useState } from "react";
import { correctSign, voidSign } from "../../../../shared/api/signs.ts";
import type { InputOf } from "../../../../shared/endpoint.ts";
import type { FacilityTime } from "../../parts/facility-time.ts";
import { dayTyped } from "../../parts/form/as-typed.ts";
import { faultsOf } from "../../parts/form/faults.ts";
import { TextField } from "../../parts/form/text-field.tsx";
import { TimeField } from "../../parts/form/time-field.tsx";
import { UpdateForm } from "../../parts/form/update-form.tsx";
import { VoidForm } from "../../parts/form/void-form.tsx";
import { useSession } from "../../parts/session.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { culturesText } from "../../texts/cultures.ts";
import { reviewsText } from "../../texts/reviews.ts";
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

type Draft = SignDraft & { readonly day: string; readonly lastDay: string; readonly readAt: string };

function draftOf({ day, at, finding, temperature, otherCause, lastDay, readAt }: Sign, time: FacilityTime): Draft {
  const unit = temperature?.endsWith("F") ? "F" : "C";
  const degrees = temperature?.replace(/\s*°[CF]$/, "") ?? "";
  return {
    ...{ day, finding, time: at === null ? "" : time.clock(at), temperature: degrees, unit, otherCause },
    ...{ lastDay: lastDay ?? "", readAt: readAt === null ? "" : time.charted(readAt) },
  };
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
    ...(finding !== "not-documented" || after.lastDay === before.lastDay
      ? {}
      : { lastDay: after.lastDay === "" ? null : dayTyped(after.lastDay) }),
    ...(finding !== "not-documented" || after.readAt === before.readAt ? {} : { readAt: after.readAt }),
  };
}

function CorrectSign({ sign, again }: { sign: Sign; again: () => void }): ReactNode {
  const { time } = useSession();
  const [before] = useState(() => draftOf(sign, time));
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
      {draft.finding === "not-documented" && <ReviewDays {...{ draft, change, faults }} />}
      <TextField pointer="/reason" label={culturesText("reason")} faults={faults} value={reason} change={setReason} />
    </UpdateForm>
  );
}

function ReviewDays({
  draft,
  change,
  faults,
}: {
  draft: Draft;
  change: (part: Partial<Draft>) => void;
  faults: ReturnType<typeof faultsOf>;
}): ReactNode {
  return (
    <>
      <TextField
        {...{ faults, pointer: "/lastDay", label: reviewsText("last"), type: "date", value: draft.lastDay }}
        change={(lastDay) => change({ lastDay })}
      />
      <TimeField
        {...{ faults, pointer: "/readAt", label: reviewsText("readAt"), help: reviewsText("readAtHelp") }}
        value={draft.readAt}
        change={(readAt) => change({ readAt })}
      />
    </>
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
