import { type ReactNode, useState } from "react";
import { correctFinding, voidFinding } from "../../../../shared/api/findings.ts";
import type { InputOf } from "../../../../shared/endpoint.ts";
import { dayTyped } from "../../parts/form/as-typed.ts";
import { faultsOf } from "../../parts/form/faults.ts";
import { TextField } from "../../parts/form/text-field.tsx";
import { UpdateForm } from "../../parts/form/update-form.tsx";
import { VoidForm } from "../../parts/form/void-form.tsx";
import { OpensOnce } from "../../parts/opens-once.tsx";
import { useSession } from "../../parts/session.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { culturesText } from "../../texts/cultures.ts";
import { findingsText as text } from "../../texts/findings.ts";
import type { Finding } from "./culture-rows.ts";
import { cellsTyped, type FindingDraft, FindingFields } from "./finding-fields.tsx";

/** Corrects or voids a finding, always with a reason; what it said is kept. */
export function FindingActs({ finding, again }: { finding: Finding; again: () => void }): ReactNode {
  return (
    <OpensOnce summary={culturesText("change")}>
      <CorrectFinding {...{ finding, again }} />
      <VoidFinding {...{ finding, again }} />
    </OpensOnce>
  );
}

/** What was changed of a finding; what was not touched is not sent. */
function changedOf(before: FindingDraft, after: FindingDraft): Partial<InputOf<typeof correctFinding>> {
  return {
    ...(after.day === before.day ? {} : { day: dayTyped(after.day) }),
    ...(after.time === before.time ? {} : { time: after.time.trim() || null }),
    ...(after.present === before.present ? {} : { present: after.present }),
    ...(after.cells === before.cells ? {} : { cellsPerMm3: cellsTyped(after.cells) }),
  };
}

function CorrectFinding({ finding, again }: { finding: Finding; again: () => void }): ReactNode {
  const { time } = useSession();
  const { findingId, day, at, present, cellsPerMm3 } = finding;
  const [before] = useState<FindingDraft>(() => ({
    ...{ day, present, time: at === null ? "" : time.clock(at) },
    cells: cellsPerMm3 === null ? "" : String(cellsPerMm3),
  }));
  const [draft, setDraft] = useState(before);
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(correctFinding);
  const record = async (seenVersion: number): Promise<void> => {
    const reply = await send({ findingId, seenVersion, ...changedOf(before, draft), reason });
    if (reply.state === "answered") again();
  };
  const faults = faultsOf(sending);
  return (
    <UpdateForm
      {...{ sending, record, again }}
      title={culturesText("correctSign")}
      button={culturesText("correctDo")}
      seenVersion={finding.version}
      isReady={reason.trim() !== ""}
      mine={{ day: draft.day, present: draft.present, cellsPerMm3: draft.cells }}
      labels={{ day: culturesText("day"), present: text("present"), cellsPerMm3: text("cells") }}
    >
      <FindingFields {...{ draft, faults }} kind={finding.finding} change={(part) => setDraft({ ...draft, ...part })} />
      <TextField pointer="/reason" label={culturesText("reason")} faults={faults} value={reason} change={setReason} />
    </UpdateForm>
  );
}

function VoidFinding({ finding, again }: { finding: Finding; again: () => void }): ReactNode {
  const { sending, send } = useRecording(voidFinding);
  return (
    <VoidForm
      {...{ sending, again }}
      title={culturesText("voidIt")}
      send={(said) => send({ findingId: finding.findingId, ...said })}
      seenVersion={finding.version}
      labels={{ day: culturesText("day") }}
    />
  );
}
