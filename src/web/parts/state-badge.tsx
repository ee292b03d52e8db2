import type { ReactNode } from "react";
import type { RoundState } from "../../../shared/round-states.ts";
import { stateText } from "../texts/words.ts";
import { Shape } from "./shape.tsx";

/** The colors that say a state once more. */
const tones: Readonly<Record<RoundState, "rust" | "plum" | "ochre" | "petrol" | "moss" | "slate">> = {
  overdue: "rust",
  missed: "rust",
  "past-threshold": "plum",
  doubtful: "slate",
  "removal-decided": "petrol",
  asked: "petrol",
  due: "ochre",
  "indication-missing": "ochre",
  "indication-outside": "ochre",
  late: "moss",
  done: "moss",
};

/** A state as a shape and a word; `children` when more is to be said than its word. */
export function StateBadge({ state, children }: { state: RoundState; children?: ReactNode }): ReactNode {
  return (
    <span className={`state tone-${tones[state]}`}>
      <Shape state={state} />
      {children ?? stateText(state)}
    </span>
  );
}
