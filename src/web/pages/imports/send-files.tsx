import { type ReactNode, useState } from "react";
import { receiveImport } from "../../../../shared/api/imports.ts";
import { importMost } from "../../../../shared/import-words.ts";
import { type FieldFault, faultsOf } from "../../parts/form/faults.ts";
import { Field } from "../../parts/form/field.tsx";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { figureWords } from "../../parts/words.ts";
import { importsText } from "../../texts/imports.ts";
import { megabytes, readChosen, roomForTexts } from "./chosen-files.ts";
import { SourceField } from "./source-field.tsx";

/** Chooses files and sends them; `sent` gets the number of the import. */
export function SendFiles({ sent }: { sent: (importId: number) => void }): ReactNode {
  const [files, setFiles] = useState<readonly File[]>([]);
  const [sourceId, setSourceId] = useState<string | null>(null);
  const [local, setLocal] = useState<readonly FieldFault[]>([]);
  const { sending, send, forget } = useRecording(receiveImport);
  const choose = (chosen: readonly File[]): void => {
    setFiles(chosen);
    setLocal([]);
    forget();
  };
  const record = async (): Promise<void> => {
    const read = await readChosen(files);
    if ("faults" in read) return setLocal(read.faults);
    const reply = await send(sourceId === null ? read : { ...read, sourceId: Number(sourceId) });
    if (reply.state === "answered") sent(reply.value.importId);
  };
  const faults = [...local, ...faultsOf(sending)];
  const limits = { lines: figureWords(importMost.lines, "whole"), size: megabytes(roomForTexts) };
  return (
    <section aria-labelledby="send-files" className="on-screen">
      <h2 id="send-files">{importsText("sendTitle")}</h2>
      <RecordForm
        {...{ sending, record }}
        labelledBy="send-files"
        button={importsText("send")}
        isReady={files.length > 0}
      >
        <Field pointer="/files" label={importsText("files")} help={importsText("filesHelp", limits)} faults={faults}>
          {(control) => (
            <input
              type="file"
              multiple
              accept=".csv,text/csv,text/plain"
              {...control}
              onChange={(event) => choose([...(event.target.files ?? [])])}
            />
          )}
        </Field>
        <SourceField value={sourceId} change={setSourceId} faults={faults} />
        <p role="status" className="small">
          {local.length > 0
            ? local.map(({ detail, remedy }) => `${detail} ${remedy}`).join(" ")
            : files.length > 0 &&
              importsText("chosen", { count: files.length, names: files.map(({ name }) => name).join(", ") })}
        </p>
      </RecordForm>
    </section>
  );
}
