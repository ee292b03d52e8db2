import type { ReactNode } from "react";
import { Corrections } from "../../parts/corrections.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { indicationLabel } from "../../texts/indications.ts";
import { itemStateText } from "../../texts/record-labels.ts";
import { storyText } from "../../texts/story.ts";
import { noteKindText, outcomeText } from "../../texts/words.ts";
import { NoteActs } from "./note-acts.tsx";
import { correctionsOf, type Note, type Story } from "./story-rows.ts";

/** Written down later than this after it happened, it says so. */
const lateMs = 60 * 60_000;

/** One note: what, when, by whom, what it says, and what it said before. */
export function NoteEntry(props: {
  note: Note;
  story: Story;
  nameOf: (personId: number) => string;
  again: () => void;
}): ReactNode {
  const { note, story, nameOf, again } = props;
  const { may, time } = useSession();
  return (
    <article>
      <h3 className="first-heading">{noteKindText(note.kind)}</h3>
      <p>
        {time.short(note.at)}, <Said>{storyText("by", { name: nameOf(note.writtenBy) })}</Said>
        {note.writtenAt - note.at > lateMs && <>, {storyText("writtenLate", { when: time.short(note.writtenAt) })}</>}
      </p>
      <Says note={note} />
      {note.voidReason !== null && (
        <p className="notice">
          <Said>{storyText("voided", { reason: note.voidReason })}</Said>
        </p>
      )}
      <Corrections corrections={correctionsOf(story, `note ${note.noteId}`)} nameOf={nameOf} />
      {note.voidReason === null && may("record-care") && <NoteActs note={note} again={again} />}
    </article>
  );
}

function Says({ note }: { note: Note }): ReactNode {
  const { outcome, indication, amountMl, items, remark } = note;
  return (
    <>
      {outcome !== null && (
        <p>
          <strong>{outcomeText(outcome)}</strong>
          {indication !== null && (
            <>
              : <Said>{indicationLabel(indication, null)}</Said>
            </>
          )}
        </p>
      )}
      {amountMl !== null && <p>{storyText("amount", { amount: amountMl })}</p>}
      {items !== null && (
        <ul>
          {Object.entries(items).map(([code, state]) => (
            <li key={code}>
              <Said>{code.replaceAll("-", " ")}</Said>: {itemStateText(state)}
            </li>
          ))}
        </ul>
      )}
      {remark !== null && (
        <p>
          <Said>“{remark}”</Said>
        </p>
      )}
    </>
  );
}
