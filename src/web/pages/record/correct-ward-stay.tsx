import { type ReactNode, useState } from "react";
import { cancelMove, correctWardStay, voidWardStay } from "../../../../shared/api/moves.ts";
import { type AbsenceKind, absenceKind, absenceKinds } from "../../../../shared/vocabulary.ts";
import { SelectField } from "../../parts/form/choice-field.tsx";
import { faultsOf } from "../../parts/form/faults.ts";
import type { FieldProps } from "../../parts/form/field.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { TimeField } from "../../parts/form/time-field.tsx";
import { UpdateForm } from "../../parts/form/update-form.tsx";
import { VoidForm } from "../../parts/form/void-form.tsx";
import { OpensOnce } from "../../parts/opens-once.tsx";
import type { WardStay } from "../../parts/patient/patient-record.ts";
import { useSession } from "../../parts/session.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { entryCharted, entryTime } from "../../texts/entry-time.ts";
import { stayCorrectionText as text } from "../../texts/stay-corrections.ts";
import { changedTexts } from "./changed-texts.ts";
import { WardChoice } from "./ward-choice.tsx";

interface Acted {
  readonly wardStay: WardStay;
  readonly again: () => void;
}

const labels = () => ({
  wardId: text("ward"),
  bed: text("bed"),
  startAt: text("startAt"),
  endAt: text("endAt"),
  absenceAfter: text("absenceAfter"),
});

/** Corrects, takes back or voids time on a ward, always with a reason; what it said is kept. */
export function WardStayCorrections(props: Acted & { isFirst: boolean }): ReactNode {
  const { wardStay, again, isFirst } = props;
  const { time, wardCode } = useSession();
  const { wardId, startAt } = wardStay;
  const label = text("wardActsOf", { ward: wardCode(wardId), from: entryTime(time, wardStay, "startAt")(startAt) });
  return (
    <OpensOnce summary={text("wardActs")} label={label}>
      <CorrectWardStay {...{ wardStay, again }} />
      {!isFirst && (
        <>
          <TakeBack {...{ wardStay, again }} endpoint={cancelMove} title={text("cancelMove")} />
          <TakeBack {...{ wardStay, again }} endpoint={voidWardStay} title={text("voidWard")} />
        </>
      )}
    </OpensOnce>
  );
}

function CorrectWardStay({ wardStay, again }: Acted): ReactNode {
  const { time, wardCode } = useSession();
  const { wardStayId, version, wardId, startAt, endAt } = wardStay;
  const [before] = useState(() => ({
    ...{ toWardId: String(wardId), bed: wardStay.bed ?? "" },
    startAt: entryCharted(time, wardStay, "startAt")(startAt),
    endAt: entryCharted(time, wardStay, "endAt")(endAt),
    absenceAfter: wardStay.absenceAfter as AbsenceKind | null,
  }));
  const [draft, setDraft] = useState(before);
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(correctWardStay);
  const record = async (seenVersion: number): Promise<void> => {
    const { toWardId, bed, ...changed } = changedTexts(before, draft);
    const reply = await send({
      ...{ wardStayId, seenVersion, reason, ...changed },
      ...(toWardId === undefined ? {} : { toWardId: Number(toWardId) }),
      ...(bed === undefined ? {} : { bed: bed.trim() || null }),
    });
    if (reply.state === "answered") again();
  };
  const faults = faultsOf(sending);
  const of = (name: "bed" | "startAt" | "endAt") => ({
    ...{ faults, pointer: `/${name}`, label: labels()[name], value: draft[name] },
    change: (value: string) => setDraft({ ...draft, [name]: value }),
  });
  return (
    <UpdateForm
      {...{ sending, record, again }}
      title={text("correctWard")}
      button={text("correctDo")}
      labels={labels()}
      seenVersion={version}
      isReady={reason.trim() !== ""}
      mine={{ ...draft, wardId: wardCode(Number(draft.toWardId)) }}
    >
      <WardChoice
        {...{ faults, value: draft.toWardId }}
        label={text("ward")}
        change={(toWardId) => setDraft({ ...draft, toWardId })}
      />
      <TextField {...of("bed")} />
      <TimeField {...of("startAt")} />
      {endAt !== null && <TimeField {...of("endAt")} />}
      {endAt !== null && (
        <AbsenceChoice
          {...{ faults, value: draft.absenceAfter }}
          change={(absenceAfter) => setDraft({ ...draft, absenceAfter })}
        />
      )}
      <TextField pointer="/reason" label={text("reason")} faults={faults} value={reason} change={setReason} />
    </UpdateForm>
  );
}

function AbsenceChoice(
  props: Pick<FieldProps, "faults"> & {
    readonly value: AbsenceKind | null;
    readonly change: (value: AbsenceKind | null) => void;
  },
): ReactNode {
  return (
    <SelectField
      {...props}
      pointer="/absenceAfter"
      label={text("absenceAfter")}
      choices={absenceKind.options.map((value) => ({ value, label: absenceKinds[value] }))}
      empty={text("noAbsence")}
    />
  );
}

function TakeBack(
  props: Acted & { readonly endpoint: typeof cancelMove | typeof voidWardStay; readonly title: string },
): ReactNode {
  const { wardStay, again, endpoint, title } = props;
  const { sending, send } = useRecording(endpoint);
  return (
    <VoidForm
      {...{ sending, again, title }}
      send={(said) => send({ wardStayId: wardStay.wardStayId, ...said })}
      seenVersion={wardStay.version}
      labels={labels()}
    />
  );
}
