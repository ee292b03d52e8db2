import { type ReactNode, useId } from "react";
import { listOrganisms } from "../../../../shared/api/organisms.ts";
import { specimenKind, specimenMethod, specimenStatus } from "../../../../shared/culture-words.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { ChoiceField, SelectField } from "../../parts/form/choice-field.tsx";
import type { FieldFault } from "../../parts/form/faults.ts";
import { TextField } from "../../parts/form/text-field.tsx";
import { TimeField } from "../../parts/form/time-field.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { specimenKindText, specimenMethodText, specimenStatusText } from "../../texts/culture-words.ts";
import { culturesText } from "../../texts/cultures.ts";
import { OrganismFields } from "./organism-fields.tsx";
import { isReported, type SpecimenDraft, withOrganism } from "./specimen-draft.ts";

interface FieldsProps {
  readonly draft: SpecimenDraft;
  readonly change: (part: Partial<SpecimenDraft>) => void;
  readonly faults: readonly FieldFault[];
}

/** Before the list is there, no name is offered. */
const none: OutputOf<typeof listOrganisms> = { organisms: [], otherNames: [] };

/** What is said of a specimen, new or corrected. */
export function SpecimenFields({ draft, change, faults }: FieldsProps): ReactNode {
  const of = (name: "kind" | "collectedAt" | "method" | "status" | "number") => ({
    ...{ pointer: `/${name}`, label: culturesText(name), faults },
  });
  return (
    <>
      <ChoiceField
        {...of("kind")}
        choices={specimenKind.options.map((value) => ({ value, label: specimenKindText(value) }))}
        value={draft.kind}
        change={(kind) => change({ kind })}
      />
      <TimeField {...of("collectedAt")} value={draft.collectedAt} change={(collectedAt) => change({ collectedAt })} />
      <ChoiceField
        {...of("status")}
        choices={specimenStatus.options.map((value) => ({ value, label: specimenStatusText(value) }))}
        value={draft.status}
        change={(status) => change({ status })}
      />
      {isReported(draft) && <Growth {...{ draft, change, faults }} />}
      <SelectField
        {...of("method")}
        choices={specimenMethod.options.map((value) => ({ value, label: specimenMethodText(value) }))}
        value={draft.method}
        change={(method) => method && change({ method })}
      />
      <TextField
        {...of("number")}
        help={culturesText("optional")}
        maxLength={100}
        value={draft.number}
        change={(number) => change({ number })}
      />
    </>
  );
}

/** What grew: somebody says that nothing did, it is never taken from an empty list. */
function Growth({ draft, change, faults }: FieldsProps): ReactNode {
  const names = useId();
  const { growth, organisms, status } = draft;
  const asked = useAnswer(listOrganisms, {});
  const { organisms: listed } = asked.state === "answered" ? asked.value : none;
  const choices = [
    { value: "some" as const, label: culturesText("grewSome") },
    { value: "none" as const, label: culturesText(status === "preliminary" ? "grewOpen" : "grewNone") },
  ];
  return (
    <>
      <ChoiceField
        pointer="/organisms"
        label={culturesText("grew")}
        faults={faults.filter(({ pointer }) => pointer === "/organisms")}
        choices={choices}
        value={growth}
        change={(one) => change({ growth: one })}
      />
      {growth === "some" && (
        <>
          <datalist id={names}>
            {listed.map(({ name }) => (
              <option key={name} value={name} />
            ))}
          </datalist>
          {organisms.map((organism, at) => (
            <OrganismFields
              key={organism.row}
              {...{ organism, at, faults, names }}
              change={(part) =>
                change({ organisms: organisms.map((one, i) => (i === at ? { ...one, ...part } : one)) })
              }
              drop={organisms.length > 1 ? () => change({ organisms: organisms.filter((_, i) => i !== at) }) : null}
            />
          ))}
          <p>
            <button type="button" onClick={() => change(withOrganism(draft))}>
              {culturesText("addOrganism")}
            </button>
          </p>
        </>
      )}
    </>
  );
}
