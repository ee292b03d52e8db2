import type { ReactNode } from "react";
import { type FindingKind, findingKinds } from "../../../../shared/case-words.ts";
import { numberTyped } from "../../parts/form/as-typed.ts";
import { ChoiceField } from "../../parts/form/choice-field.tsx";
import type { FieldFault } from "../../parts/form/faults.ts";
import { TextField } from "../../parts/form/text-field.tsx";
import { culturesText } from "../../texts/cultures.ts";
import { findingsText as text } from "../../texts/findings.ts";

/** What was written down of a finding so far. */
export interface FindingDraft {
  readonly day: string;
  readonly time: string;
  readonly present: boolean;
  readonly cells: string;
}

/** Every kind with its words. */
export const kinds = Object.entries(findingKinds).map(([value, label]) => ({ value: value as FindingKind, label }));

/** The number of cells as it is sent; an empty field is null. */
export function cellsTyped(cells: string): number | null {
  return cells.trim() === "" ? null : numberTyped(cells);
}

/** The day, the hour, whether it was so, and of white blood cells how many. */
export function FindingFields(props: {
  kind: FindingKind | null;
  draft: FindingDraft;
  change: (part: Partial<FindingDraft>) => void;
  faults: readonly FieldFault[];
}): ReactNode {
  const { kind, draft, change, faults } = props;
  return (
    <>
      <TextField
        {...{ faults, pointer: "/day", label: culturesText("day"), value: draft.day }}
        type="date"
        change={(day) => change({ day })}
      />
      <TextField
        {...{ faults, pointer: "/time", label: text("time"), help: text("timeHelp"), value: draft.time }}
        maxLength={5}
        change={(time) => change({ time })}
      />
      <ChoiceField
        {...{ faults, pointer: "/present", label: text("present") }}
        choices={[
          { value: "yes", label: text("isSo") },
          { value: "no", label: text("isNotSo") },
        ]}
        value={draft.present ? "yes" : "no"}
        change={(one) => change({ present: one === "yes" })}
      />
      {kind === "pyuria" && (
        <TextField
          {...{ faults, pointer: "/cellsPerMm3", label: text("cells"), help: text("cellsHelp"), value: draft.cells }}
          inputMode="decimal"
          change={(cells) => change({ cells })}
        />
      )}
    </>
  );
}
