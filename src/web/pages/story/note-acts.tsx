import { type ReactNode, useState } from "react";
import { correctNote, voidNote } from "../../../../shared/api/notes.ts";
import { faultsOf } from "../../parts/form/faults.ts";
import { TextField } from "../../parts/form/text-field.tsx";
import { TimeField } from "../../parts/form/time-field.tsx";
import { UpdateForm } from "../../parts/form/update-form.tsx";
import { VoidForm } from "../../parts/form/void-form.tsx";
import { useSession } from "../../parts/session.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { storyText } from "../../texts/story.ts";
import type { Note } from "./story-rows.ts";

/** Corrects or voids a note, always with a reason; what it said is kept. */
export function NoteActs({ note, again }: { note: Note; again: () => void }): ReactNode {
  return (
    <details className="on-screen">
      <summary>{storyText("actions")}</summary>
      <CorrectNote note={note} again={again} />
      <VoidNote note={note} again={again} />
    </details>
  );
}

function CorrectNote({ note, again }: { note: Note; again: () => void }): ReactNode {
  const { time } = useSession();
  const [at, setAt] = useState(() => time.charted(note.at));
  const [remark, setRemark] = useState(note.remark ?? "");
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(correctNote);
  const record = async (seenVersion: number): Promise<void> => {
    // A time that was not touched keeps its seconds.
    const changed = at === time.charted(note.at) ? {} : { at };
    const said = { remark: remark.trim() || null, reason };
    const reply = await send({ noteId: note.noteId, seenVersion, ...changed, ...said });
    if (reply.state === "answered") again();
  };
  const faults = faultsOf(sending);
  return (
    <UpdateForm
      {...{ sending, record, again }}
      title={storyText("correctIt")}
      button={storyText("correctDo")}
      seenVersion={note.version}
      isReady={reason.trim() !== ""}
      mine={{ at, remark }}
      labels={{ at: storyText("at"), remark: storyText("remark") }}
    >
      <TimeField pointer="/at" label={storyText("at")} faults={faults} value={at} change={setAt} />
      <TextField pointer="/remark" label={storyText("remark")} faults={faults} value={remark} change={setRemark} />
      <TextField pointer="/reason" label={storyText("reason")} faults={faults} value={reason} change={setReason} />
    </UpdateForm>
  );
}

function VoidNote({ note, again }: { note: Note; again: () => void }): ReactNode {
  const { sending, send } = useRecording(voidNote);
  return (
    <VoidForm
      {...{ sending, again }}
      title={storyText("voidIt")}
      send={(said) => send({ noteId: note.noteId, ...said })}
      seenVersion={note.version}
      labels={{ at: storyText("at"), remark: storyText("remark") }}
    />
  );
}
