import type { ReactNode } from "react";
import { Corrections } from "../../parts/corrections.tsx";
import { RecordTable } from "../../parts/patient/record-table.tsx";
import { useSession } from "../../parts/session.tsx";
import { storyText } from "../../texts/story.ts";
import { insertionRows } from "../insertion/record-rows.ts";
import { removalRows } from "../removal/removal-rows.ts";
import { NoteEntry } from "./note-entry.tsx";
import { correctionsOf, outWords, type Story, sinceWords } from "./story-rows.ts";

interface EntriesProps {
  readonly story: Story;
  readonly nameOf: (personId: number) => string;
  readonly again: () => void;
}

/** Everything that was written about the catheter, newest first; what was voided stays to be read. */
export function Entries({ story, nameOf, again }: EntriesProps): ReactNode {
  const notes = [...story.notes].sort((a, b) => b.at - a.at || b.noteId - a.noteId);
  return (
    <section aria-labelledby="entries">
      <h2 id="entries">{storyText("entries")}</h2>
      <ol className="plain-list" reversed>
        <Removal story={story} />
        {notes.map((note) => (
          <li key={note.noteId} className="card">
            <NoteEntry key={note.version} {...{ note, story, nameOf, again }} />
          </li>
        ))}
        <li className="card">
          <Insertion story={story} />
          <Corrections corrections={correctionsOf(story, `catheter ${story.catheterId}`)} nameOf={nameOf} />
        </li>
      </ol>
    </section>
  );
}

function Removal({ story }: { story: Story }): ReactNode {
  const { time } = useSession();
  const out = outWords(story, time);
  if (out === null) return null;
  return (
    <li className="card">
      <h3 className="first-heading">{storyText("removal")}</h3>
      <RecordTable rows={removalRows(out, story.removalRecord ?? {})} />
    </li>
  );
}

function Insertion({ story }: { story: Story }): ReactNode {
  const { time } = useSession();
  const { kind, indication, sizeFr, balloonMl } = story;
  const insertedAt = sinceWords(story, time);
  const record = story.insertionRecord ?? {};
  return (
    <>
      <h3 className="first-heading">{storyText("insertion")}</h3>
      <RecordTable rows={insertionRows({ kind, insertedAt, indication, sizeFr, balloonMl, record }, null)} />
    </>
  );
}
