import { useCallback, useEffect, useState } from "react";
import { type confirmCatheter, type reviewCatheter, voidNote } from "../../../../shared/api/notes.ts";
import type { InputOf } from "../../../../shared/endpoint.ts";
import type { AnsweredProblem } from "../../../../shared/problem-document.ts";
import { ask, newKey } from "../../parts/server.ts";
import { roundText } from "../../texts/round.ts";

/** For how long a note that was just recorded can be undone with one touch. Common practice. */
const undoMs = 5 * 60_000;

type Endpoint = typeof reviewCatheter | typeof confirmCatheter;

interface Written {
  readonly noteId: number;
  readonly version: number;
}

/** Where a note stands that was recorded with one touch. `what` says it in words. */
export type QuickNoteState =
  | { readonly phase: "none" }
  | { readonly phase: "sending"; readonly what: string }
  | {
      readonly phase: "recorded";
      readonly what: string;
      readonly at: number;
      readonly written: Written;
      readonly canUndo: boolean;
    }
  | { readonly phase: "undone"; readonly what: string }
  | { readonly phase: "refused"; readonly what: string; readonly problem: AnsweredProblem }
  | { readonly phase: "unreachable"; readonly what: string; readonly sendAgain: () => void };

export interface QuickNote {
  readonly state: QuickNoteState;
  readonly record: <E extends Endpoint>(endpoint: E, input: InputOf<E>, what: string) => void;
  readonly undo: () => void;
}

/** Records a note at once; it shows before the server has answered, and can be undone for a while. */
export function useQuickNote(onRecorded: () => void): QuickNote {
  const [state, setState] = useState<QuickNoteState>({ phase: "none" });
  const record = useCallback(
    <E extends Endpoint>(endpoint: E, input: InputOf<E>, what: string): void => {
      const key = newKey();
      const send = async (): Promise<void> => {
        setState({ phase: "sending", what });
        const reply = await ask(endpoint, input, { key });
        if (reply.state === "unreachable") setState({ phase: "unreachable", what, sendAgain: () => void send() });
        else if (reply.state === "refused") setState({ phase: "refused", what, problem: reply.problem });
        else {
          setState({ phase: "recorded", what, at: Date.parse(input.at), written: reply.value, canUndo: true });
          onRecorded();
        }
      };
      void send();
    },
    [onRecorded],
  );
  const undo = useCallback(() => void takeBack(state, setState, onRecorded), [state, onRecorded]);
  useUndoTime(state, setState);
  return { state, record, undo };
}

async function takeBack(
  state: QuickNoteState,
  setState: (state: QuickNoteState) => void,
  onRecorded: () => void,
): Promise<void> {
  if (state.phase !== "recorded") return;
  const { what, written } = state;
  const reply = await ask(voidNote, {
    noteId: written.noteId,
    seenVersion: written.version,
    reason: roundText("undoReason"),
  });
  if (reply.state === "answered") {
    setState({ phase: "undone", what });
    onRecorded();
  } else if (reply.state === "refused") setState({ phase: "refused", what: roundText("undo"), problem: reply.problem });
  else {
    const sendAgain = () => void takeBack(state, setState, onRecorded);
    setState({ phase: "unreachable", what: roundText("undo"), sendAgain });
  }
}

function useUndoTime(state: QuickNoteState, setState: (state: QuickNoteState) => void): void {
  useEffect(() => {
    if (state.phase !== "recorded" || !state.canUndo) return;
    const timer = setTimeout(() => setState({ ...state, canUndo: false }), undoMs);
    return () => clearTimeout(timer);
  }, [state, setState]);
}
