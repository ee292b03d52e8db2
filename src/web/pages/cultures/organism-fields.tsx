import type { ReactNode } from "react";
import { organismGroup } from "../../../../shared/culture-words.ts";
import { SelectField } from "../../parts/form/choice-field.tsx";
import { type FieldFault, faultsAt, useFieldIds } from "../../parts/form/faults.ts";
import { Field } from "../../parts/form/field.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { organismGroupText } from "../../texts/culture-words.ts";
import { culturesText } from "../../texts/cultures.ts";
import type { OrganismDraft } from "./specimen-draft.ts";

/** One organism of a report: its name, how much grew, and its group where the list does not have the name. */
export function OrganismFields(props: {
  organism: OrganismDraft;
  at: number;
  faults: readonly FieldFault[];
  /** The id of the list of names that are offered. */
  names: string;
  isListed: boolean;
  change: (part: Partial<OrganismDraft>) => void;
  /** null: it is the only one. */
  drop: (() => void) | null;
}): ReactNode {
  const { organism, at, faults, names, isListed, change, drop } = props;
  const pointer = `/organisms/${at}`;
  const number = at + 1;
  const isFaulty = faultsAt(faults, `${pointer}/group`).length > 0;
  const id = useFieldIds()(pointer);
  return (
    <fieldset className="card organism" id={id} tabIndex={-1}>
      <legend>{culturesText("organism", { number })}</legend>
      <NameField pointer={`${pointer}/name`} {...{ faults, names, change }} name={organism.name} />
      <TextField
        pointer={`${pointer}/count`}
        label={culturesText("count")}
        help={culturesText("countHelp")}
        faults={faults}
        maxLength={60}
        value={organism.count}
        change={(count) => change({ count })}
      />
      {((organism.name.trim() !== "" && !isListed) || organism.group !== null || isFaulty) && (
        <SelectField
          pointer={`${pointer}/group`}
          label={culturesText("group")}
          help={culturesText("groupHelp")}
          faults={faults}
          choices={organismGroup.options.map((value) => ({ value, label: organismGroupText(value) }))}
          empty={culturesText("groupOpen")}
          value={organism.group}
          change={(group) => change({ group })}
        />
      )}
      {drop && (
        <button type="button" onClick={drop}>
          {culturesText("dropOrganism", { number })}
        </button>
      )}
    </fieldset>
  );
}

/** The name as the laboratory wrote it; names on the list are offered. */
function NameField(props: {
  pointer: string;
  faults: readonly FieldFault[];
  names: string;
  name: string;
  change: (part: Pick<OrganismDraft, "name">) => void;
}): ReactNode {
  const { pointer, faults, names, name, change } = props;
  return (
    <Field {...{ pointer, faults }} label={culturesText("name")} help={culturesText("nameHelp")}>
      {(control) => (
        <input
          {...control}
          className="long"
          list={names}
          autoComplete="off"
          maxLength={200}
          value={name}
          onChange={(event) => change({ name: event.target.value })}
        />
      )}
    </Field>
  );
}
