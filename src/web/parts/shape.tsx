import type { ReactNode } from "react";
import type { RoundState } from "../../../shared/round-states.ts";

/** The shape of each state: told apart without color, also printed in black. 16 units square, drawn in the text's color. */
const shapes: Readonly<Record<RoundState, ReactNode>> = {
  overdue: <path d="M8 1 15 15H1Z" />,
  missed: <path d="M8 2.5 13.8 14H2.2ZM5 8.5 11 12" fill="none" stroke="currentColor" strokeWidth="1.6" />,
  "past-threshold": <path d="M2 1h12v2L9.5 8 14 13v2H2v-2L6.5 8 2 3Z" />,
  doubtful: (
    <path
      d="M5 5.5a3 3 0 1 1 4.5 2.6c-1 .6-1.5 1.1-1.5 2.4M8 13v1.8"
      fill="none"
      stroke="currentColor"
      strokeWidth="2"
    />
  ),
  "removal-decided": <path d="M6.5 1h3v7h4L8 14.5 2.5 8h4ZM2 15h12" stroke="currentColor" />,
  asked: <path d="M1 2h14v9H8l-4 4v-4H1Z" fill="none" stroke="currentColor" strokeWidth="1.6" />,
  due: <circle cx="8" cy="8" r="6" fill="none" stroke="currentColor" strokeWidth="2" />,
  "indication-missing": (
    <path d="M2 2h12v12H2Z" fill="none" stroke="currentColor" strokeWidth="1.8" strokeDasharray="3 2" />
  ),
  "indication-outside": <path d="M2 2h12v12H2ZM2 14 14 2" fill="none" stroke="currentColor" strokeWidth="1.8" />,
  late: <path d="M1.5 9 6 13.5 14.5 3M11 14h4" fill="none" stroke="currentColor" strokeWidth="2" />,
  done: <path d="M1.5 8.5 6 13 14.5 3" fill="none" stroke="currentColor" strokeWidth="2.4" />,
};

/** The shape of a state, for who sees; the word stands beside it. */
export function Shape({ state }: { state: RoundState }): ReactNode {
  return (
    <svg viewBox="0 0 16 16" aria-hidden="true" focusable="false" fill="currentColor">
      {shapes[state]}
    </svg>
  );
}
