import type { ReactNode } from "react";
import type { SheetCell } from "../../../../shared/sheet.ts";
import { NotFinal } from "../../parts/not-final.tsx";
import { figureWords } from "../../parts/words.ts";

/** How a figure opens to the rows it was made of. */
export interface Opening {
  readonly isOpen: boolean;
  /** The id of what it opens. */
  readonly panelId: string;
  readonly toggle: () => void;
  /** Completes the figure for who cannot see where it stands: `patient-days of 3E: ward days`. */
  readonly words: string;
}

/** A cell with a figure: a button that opens it, or the figure alone where there is nothing to open. */
export function Figure(props: {
  cell: SheetCell;
  kind: "whole" | "ratio";
  opening?: Opening | undefined;
  /** Cultures that could still change it. */
  open?: number;
}): ReactNode {
  const { cell, kind, opening, open } = props;
  const text = figureWords(cell, kind);
  const notFinal = cell === null ? null : <NotFinal open={open} />;
  if (!opening || cell === null)
    return (
      <td className="figure">
        {text}
        {notFinal}
      </td>
    );
  return (
    <td className="figure">
      <button
        type="button"
        className="opens"
        aria-expanded={opening.isOpen}
        aria-controls={opening.isOpen ? opening.panelId : undefined}
        onClick={opening.toggle}
      >
        {text}
        <span className="unseen"> {opening.words}</span>
      </button>
      {notFinal}
    </td>
  );
}
