import type { ReactNode } from "react";
import type { ImportState as State } from "../../../../shared/import-words.ts";
import { Shape } from "../../parts/shape.tsx";
import { importStateText } from "../../texts/imports.ts";

/** The shape and the color that say a state once more. */
const looks = {
  received: ["due", "slate"],
  staging: ["due", "slate"],
  checking: ["due", "slate"],
  checked: ["asked", "ochre"],
  applying: ["due", "petrol"],
  applied: ["done", "moss"],
  refused: ["missed", "rust"],
  "dry-run": ["indication-missing", "slate"],
  discarded: ["indication-outside", "slate"],
} as const;

/** Where an import stands, as a shape and words. */
export function ImportState({ state }: { state: State }): ReactNode {
  const [shape, tone] = looks[state];
  return (
    <span className={`state tone-${tone}`}>
      <Shape state={shape} />
      {importStateText(state)}
    </span>
  );
}
