import type { ReactNode } from "react";
import { useSession } from "../../parts/session.tsx";
import { Refusal } from "../../parts/show-answer.tsx";
import { roundText } from "../../texts/round.ts";
import type { QuickNote } from "./use-quick-note.ts";

/** What became of a note that was recorded with one touch, told also to who does not see it. */
export function QuickNoteWords({ note }: { note: QuickNote }): ReactNode {
  const { state } = note;
  return (
    <div className="quick-note">
      <div role="status">
        {state.phase === "sending" && <p className="notice done">{roundText("recording", { what: state.what })}</p>}
        {state.phase === "recorded" && <Recorded note={note} />}
        {state.phase === "undone" && <p className="notice">{roundText("undone", { what: state.what })}</p>}
      </div>
      {(state.phase === "refused" || state.phase === "unreachable") && (
        <div role="alert" className="notice fault">
          <p>
            <strong>{roundText("notRecorded", { what: state.what })}.</strong>
          </p>
          {state.phase === "refused" ? (
            <Refusal document={state.problem.document} />
          ) : (
            <p>{roundText("lostConnection")}</p>
          )}
          {state.phase === "unreachable" && (
            <button type="button" className="first" onClick={state.sendAgain}>
              {roundText("tryAgain")}
            </button>
          )}
        </div>
      )}
    </div>
  );
}

function Recorded({ note }: { note: QuickNote }): ReactNode {
  const { time } = useSession();
  const { state } = note;
  if (state.phase !== "recorded") return null;
  return (
    <p className="notice done row">
      <span>{roundText("recorded", { time: time.clock(state.at), what: state.what })}</span>
      {state.canUndo && (
        <button type="button" onClick={note.undo}>
          {roundText("undo")}
        </button>
      )}
    </p>
  );
}
