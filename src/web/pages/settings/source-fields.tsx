import type { ReactNode } from "react";
import { type SourceSettings, sourceSettings } from "../../../../shared/source-settings.ts";
import { ChoiceField } from "../../parts/form/choice-field.tsx";
import type { FieldFault } from "../../parts/form/faults.ts";
import { TextField } from "../../parts/form/text-field.tsx";
import { sourceText } from "../../texts/import-sources.ts";

/** A source as it is typed. */
export interface SourceDraft extends SourceSettings {
  readonly name: string;
}

/** A source as it is sent. */
export function sourceSaid({ name, ...settings }: SourceDraft) {
  return { name, settings };
}

/** The fields of a source: its name, and how its files are read. */
export function SourceFields(props: {
  draft: SourceDraft;
  change: (part: Partial<SourceDraft>) => void;
  faults: readonly FieldFault[];
}): ReactNode {
  const { draft, change, faults } = props;
  const { emptyOrganism, midnight } = sourceSettings.shape;
  return (
    <>
      <TextField
        pointer="/name"
        label={sourceText("name")}
        help={sourceText("nameHelp")}
        faults={faults}
        value={draft.name}
        change={(name) => change({ name })}
      />
      <ChoiceField
        pointer="/settings/emptyOrganism"
        label={sourceText("emptyOrganism")}
        help={sourceText("emptyOrganismHelp")}
        faults={faults}
        choices={emptyOrganism.options.map((value) => ({ value, label: sourceText(`emptyOrganism_${value}`) }))}
        value={draft.emptyOrganism}
        change={(value) => change({ emptyOrganism: value })}
      />
      <ChoiceField
        pointer="/settings/midnight"
        label={sourceText("midnight")}
        help={sourceText("midnightHelp")}
        faults={faults}
        choices={midnight.options.map((value) => ({ value, label: sourceText(`midnight_${value}`) }))}
        value={draft.midnight}
        change={(value) => change({ midnight: value })}
      />
    </>
  );
}
