import { type ReactNode, useState } from "react";
import { chooseLaboratoryWords } from "../../../../shared/api/laboratory-words.ts";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { LongTextField } from "../../parts/form/text-field.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { wordsText } from "../../texts/laboratory-words.ts";
import { RowsFromFile } from "../settings/rows-from-file.tsx";
import { choicesOf } from "./choices-csv.ts";

/** A table of choices from a file or typed: all rows are stored, or none. */
export function ImportChoices({ done }: { done: (words: string) => void }): ReactNode {
  const [csv, setCsv] = useState("");
  const { sending, send } = useRecording(chooseLaboratoryWords);
  const words = choicesOf(csv);
  const record = async (): Promise<void> => {
    const reply = await send({ words });
    if (reply.state !== "answered") return;
    setCsv("");
    done(wordsText("imported", { count: reply.value.stored }));
  };
  const faults = faultsOf(sending).map((fault) => {
    const [, row] = /^\/words\/(\d+)/.exec(fault.pointer) ?? [];
    const wording = row === undefined ? undefined : words[Number(row)]?.wording;
    return wording === undefined ? fault : { ...fault, pointer: "/words", detail: `${wording}: ${fault.detail}` };
  });
  return (
    <section aria-labelledby="import-words" className="on-screen">
      <h2 id="import-words">{wordsText("table")}</h2>
      <FieldScope value="import-words">
        <RecordForm
          {...{ sending, record }}
          button={wordsText("import")}
          isReady={words.length > 0}
          labelledBy="import-words"
          isSmall
        >
          <LongTextField
            pointer="/words"
            label={wordsText("tableText")}
            help={wordsText("tableHelp")}
            faults={faults}
            value={csv}
            change={setCsv}
          />
          <RowsFromFile take={setCsv} />
        </RecordForm>
      </FieldScope>
    </section>
  );
}
