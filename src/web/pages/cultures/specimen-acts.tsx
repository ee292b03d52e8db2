import { type ReactNode, useId, useState } from "react";
import { correctSpecimen, voidSpecimen } from "../../../../shared/api/cultures.ts";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { TextField } from "../../parts/form/text-field.tsx";
import { EntryForm } from "../../parts/form/update-form.tsx";
import { VoidForm } from "../../parts/form/void-form.tsx";
import { useSession } from "../../parts/session.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { culturesText } from "../../texts/cultures.ts";
import type { Specimen } from "./culture-rows.ts";
import { changedOf, draftOf, isSaid, specimenDifferences } from "./specimen-draft.ts";
import { SpecimenFields } from "./specimen-fields.tsx";
import { useKeptWords } from "./use-kept-words.ts";

/** Corrects or voids a specimen, always with a reason; what it said is kept. */
export function SpecimenActs({ specimen, again }: { specimen: Specimen; again: () => void }): ReactNode {
  return (
    <details className="on-screen">
      <summary>{culturesText("change")}</summary>
      <CorrectSpecimen {...{ specimen, again }} />
      <VoidSpecimen {...{ specimen, again }} />
    </details>
  );
}

function CorrectSpecimen({ specimen, again }: { specimen: Specimen; again: () => void }): ReactNode {
  const { time } = useSession();
  const id = useId();
  const { specimenId, version } = specimen;
  const [before] = useState(() => draftOf(specimen, time));
  const [draft, setDraft] = useState(before);
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(correctSpecimen);
  const keepWords = useKeptWords();
  const [isRefused, setRefused] = useState(false);
  const record = async (seenVersion: number): Promise<void> => {
    const reply = await send({ specimenId, seenVersion, ...changedOf(before, draft), reason });
    if (reply.state !== "answered") return;
    setRefused(!(await keepWords(draft)));
    again();
  };
  const faults = faultsOf(sending);
  return (
    <section>
      <h4 id={id}>{culturesText("correct")}</h4>
      <div role="status">{isRefused && <p className="notice">{culturesText("groupNotKept")}</p>}</div>
      <FieldScope value={id}>
        <EntryForm
          {...{ sending, record, again }}
          isSmall
          labelledBy={id}
          button={culturesText("correctDo")}
          seenVersion={version}
          isReady={reason.trim() !== "" && isSaid(draft)}
          compare={(current) => specimenDifferences(draft, current, time)}
        >
          <SpecimenFields {...{ draft, faults }} change={(part) => setDraft({ ...draft, ...part })} />
          <TextField
            pointer="/reason"
            label={culturesText("reason")}
            faults={faults}
            value={reason}
            change={setReason}
          />
        </EntryForm>
      </FieldScope>
    </section>
  );
}

function VoidSpecimen({ specimen, again }: { specimen: Specimen; again: () => void }): ReactNode {
  const { sending, send } = useRecording(voidSpecimen);
  return (
    <VoidForm
      {...{ sending, again }}
      title={culturesText("voidIt")}
      send={(said) => send({ specimenId: specimen.specimenId, ...said })}
      seenVersion={specimen.version}
      labels={{ collectedAt: culturesText("collectedAt"), number: culturesText("number") }}
    />
  );
}
