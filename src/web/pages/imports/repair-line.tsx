import { type ReactNode, useId, useState } from "react";
import { dropImportLine, repairImportLine } from "../../../../shared/api/import-lines.ts";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { Said } from "../../parts/said.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { importText } from "../../texts/imports.ts";
import type { Line } from "./import-lines.tsx";

interface Place {
  readonly importId: number;
  readonly file: string;
  readonly line: number;
  /** Where the line stands, in words. */
  readonly place: string;
  readonly settled: (words: string) => void;
}

/** Repairs a line that was set aside, column by column, or drops it. */
export function RepairLine({ cells, ...at }: Place & { cells: NonNullable<Line["cells"]> }): ReactNode {
  const id = useId();
  return (
    <details className="on-screen">
      <summary>{importText("repair", { place: at.place })}</summary>
      <p>{importText("repairLead")}</p>
      <FieldScope value={`${id}repair`}>
        <RepairForm {...at} cells={cells} />
      </FieldScope>
      <h4>{importText("dropTitle")}</h4>
      <FieldScope value={`${id}drop`}>
        <DropForm {...at} />
      </FieldScope>
    </details>
  );
}

function RepairForm({
  cells,
  importId,
  file,
  line,
  place,
  settled,
}: Place & { cells: NonNullable<Line["cells"]> }): ReactNode {
  const [values, setValues] = useState(() => Object.fromEntries(cells.map(({ column, value }) => [column, value])));
  const { sending, send } = useRecording(repairImportLine);
  const record = async (): Promise<void> => {
    const reply = await send({ importId, file, line, values });
    if (reply.state === "answered") settled(importText("repaired", { place }));
  };
  return (
    <RecordForm {...{ sending, record }} button={importText("store")}>
      {cells.map(({ column, required }) => (
        <TextField
          key={column}
          pointer={`/values/${column}`}
          label={
            <>
              <Said>{column}</Said> {!required && <span className="small">{importText("empty")}</span>}
            </>
          }
          faults={faultsOf(sending)}
          value={values[column] ?? ""}
          change={(value) => setValues((before) => ({ ...before, [column]: value }))}
        />
      ))}
    </RecordForm>
  );
}

function DropForm({ importId, file, line, place, settled }: Place): ReactNode {
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(dropImportLine);
  const record = async (): Promise<void> => {
    const reply = await send({ importId, file, line, reason });
    if (reply.state === "answered") settled(importText("dropped", { place }));
  };
  return (
    <RecordForm {...{ sending, record }} button={importText("drop")} isReady={reason.trim() !== ""} isSmall>
      <TextField
        pointer="/reason"
        label={importText("dropReason")}
        help={importText("dropHint")}
        faults={faultsOf(sending)}
        value={reason}
        change={setReason}
      />
    </RecordForm>
  );
}
