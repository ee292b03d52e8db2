import { type ReactNode, useState } from "react";
import { addBaseline } from "../../../../shared/api/baselines.ts";
import { type BaselineKind, baselineColumns, baselineKinds } from "../../../../shared/baseline-words.ts";
import { SelectField } from "../../parts/form/choice-field.tsx";
import { type FieldFault, FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { LongTextField, TextField } from "../../parts/form/text-field.tsx";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { baselinesText as text } from "../../texts/baselines.ts";
import { RowsFromFile } from "./rows-from-file.tsx";

const kinds = Object.entries(baselineKinds).map(([value, label]) => ({ value: value as BaselineKind, label }));
const origin = ["name", "source", "year", "population", "definition", "edition"] as const;
const head = (kind: BaselineKind): string => baselineColumns[kind].join(",");

/** Adds a baseline: what a reader must know of it, and its rows, typed or from a file. */
export function AddBaseline({ done }: { done: () => void }): ReactNode {
  const { me } = useSession();
  const [began] = useState(() => ({
    ...{ kind: "pooled" as BaselineKind, csv: `${head("pooled")}\n` },
    ...{ name: "", source: "", year: "", population: "", definition: "", edition: "" },
  }));
  const { draft, change, clear } = useDraft("baseline", began, me.personId);
  const { sending, send } = useRecording(addBaseline);
  const faults = faultsOf(sending).map(atItsLine);
  const record = async (): Promise<void> => {
    const reply = await send({ ...draft });
    if (reply.state !== "answered") return;
    clear();
    done();
  };
  // The names of the columns are those of the kind, as long as nobody wrote rows under them.
  const setKind = (kind: BaselineKind): void =>
    change(draft.csv.trim() === head(draft.kind) ? { kind, csv: `${head(kind)}\n` } : { kind });
  return (
    <section aria-labelledby="add" className="on-screen">
      <h2 id="add">{text("add")}</h2>
      <FieldScope value="add">
        <RecordForm {...{ sending, record }} button={text("addRecord")} labelledBy="add">
          <SelectField
            {...{ faults, pointer: "/kind", label: text("kind"), choices: kinds, value: draft.kind }}
            change={(kind) => kind !== null && setKind(kind)}
          />
          {origin.map((name) => (
            <TextField
              key={name}
              {...{ faults, pointer: `/${name}`, label: text(name), value: draft[name] }}
              change={(value) => change({ [name]: value })}
            />
          ))}
          <LongTextField
            {...{ faults, pointer: "/csv", label: text("csv"), value: draft.csv }}
            help={text("csvHelp", { columns: baselineColumns[draft.kind].join(", ") })}
            change={(csv) => change({ csv })}
          />
          <RowsFromFile take={(csv) => change({ csv })} />
        </RecordForm>
      </FieldScope>
    </section>
  );
}

/** A fault of a row at the field of the rows, with its line: the first one names the columns. */
function atItsLine(fault: FieldFault): FieldFault {
  const [, row] = /^\/(?:rates|rows)\/(\d+)/.exec(fault.pointer) ?? [];
  if (row === undefined && !/^\/(rates|rows|terms|intercept)/.test(fault.pointer)) return fault;
  const detail = row === undefined ? fault.detail : text("line", { line: Number(row) + 2, detail: fault.detail });
  return { ...fault, pointer: "/csv", detail };
}
