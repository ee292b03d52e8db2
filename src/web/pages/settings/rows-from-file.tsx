import { type ReactNode, useId, useState } from "react";
import { baselinesText as text } from "../../texts/baselines.ts";
import { readChosen } from "../imports/chosen-files.ts";

/** Takes the text of a file that the person chooses; what is no text is told, and nothing is taken. */
export function RowsFromFile({ take }: { take: (text: string) => void }): ReactNode {
  const id = useId();
  const [isNoText, setNoText] = useState(false);
  const read = async (files: readonly File[]): Promise<void> => {
    const chosen = await readChosen(files);
    const [file] = "files" in chosen ? chosen.files : [];
    setNoText(file === undefined);
    if (file) take(file.text);
  };
  return (
    <div className={isNoText ? "field faulty" : "field"}>
      <label htmlFor={id}>{text("file")}</label>
      <input
        id={id}
        type="file"
        accept=".csv,text/csv,text/plain"
        aria-invalid={isNoText}
        aria-describedby={isNoText ? `${id}-fault` : undefined}
        onChange={(event) => void read([...(event.target.files ?? [])])}
      />
      {isNoText && (
        <p id={`${id}-fault`} role="alert" className="fault">
          {text("notText")}
        </p>
      )}
    </div>
  );
}
