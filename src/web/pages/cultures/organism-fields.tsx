import type { ReactNode } from "react";
import { readOrganismName } from "../../../../shared/api/laboratory-words.ts";
import { organismGroup } from "../../../../shared/culture-words.ts";
import { SelectField } from "../../parts/form/choice-field.tsx";
import { type FieldFault, faultsAt, useFieldIds } from "../../parts/form/faults.ts";
import { Field } from "../../parts/form/field.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { useSession } from "../../parts/session.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
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
  change: (part: Partial<OrganismDraft>) => void;
  /** null: it is the only one. */
  drop: (() => void) | null;
}): ReactNode {
  const { organism, at, faults, names, change, drop } = props;
  const pointer = `/organisms/${at}`;
  const number = at + 1;
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
      {organism.name.trim() !== "" && <GroupField {...{ organism, pointer, faults, change }} />}
      {drop && (
        <button type="button" onClick={drop}>
          {culturesText("dropOrganism", { number })}
        </button>
      )}
    </fieldset>
  );
}

/** The group of a name that is not read: chosen for this specimen, and on demand for each with the same wording. */
function GroupField(props: {
  organism: OrganismDraft;
  pointer: string;
  faults: readonly FieldFault[];
  change: (part: Partial<OrganismDraft>) => void;
}): ReactNode {
  const { organism, pointer, faults, change } = props;
  const { may } = useSession();
  const asked = useAnswer(readOrganismName, { name: organism.name.trim() });
  const read = asked.state === "answered" ? asked.value : null;
  const isFaulty = faultsAt(faults, `${pointer}/group`).length > 0;
  if (organism.group === null && !isFaulty && read?.group !== null) return null;
  const proposal = read?.proposal ?? null;
  return (
    <>
      <SelectField
        pointer={`${pointer}/group`}
        label={culturesText("group")}
        help={proposal === null ? culturesText("groupHelp") : culturesText("groupProposal", { name: proposal })}
        faults={faults}
        choices={organismGroup.options.map((value) => ({ value, label: organismGroupText(value) }))}
        empty={culturesText("groupOpen")}
        value={organism.group}
        change={(group) => change({ group })}
      />
      {organism.group !== null && read?.isOnList === false && may("judge-cases") && (
        <label className="choice">
          <input
            type="checkbox"
            checked={organism.isKept ?? false}
            onChange={(event) => change({ isKept: event.target.checked })}
          />
          <span>{culturesText("groupKeep")}</span>
        </label>
      )}
    </>
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
