import { type ReactNode, useState } from "react";
import type { Endpoint, InputOf } from "../../../shared/endpoint.ts";
import { type DocumentType, documentTypes } from "../../../shared/report-document.ts";
import { takeText as text } from "../texts/take.ts";
import { saveFile } from "./save-file.ts";
import { askForFile } from "./server.ts";

const types = Object.entries(documentTypes) as [DocumentType, "pdf" | "xlsx" | "csv"][];

/** Hands out a document as PDF, XLSX or CSV; one that takes longer says that it is being made. */
export function TakeDocument<E extends Endpoint>(props: { endpoint: E; input: InputOf<E>; name: string }): ReactNode {
  const { endpoint, input, name } = props;
  const [state, setState] = useState<"none" | "making" | "failed">("none");
  const take = async (type: DocumentType, ending: string): Promise<void> => {
    setState("making");
    const file = await askForFile(endpoint, input, type);
    setState(file === null ? "failed" : "none");
    if (file !== null) saveFile(`${name}.${ending}`, file);
  };
  return (
    <div className="row on-screen">
      {types.map(([type, ending]) => (
        <button key={type} type="button" disabled={state === "making"} onClick={() => void take(type, ending)}>
          {text(ending)}
        </button>
      ))}
      <span role="status">{state === "making" ? text("making") : ""}</span>
      {state === "failed" && <p role="alert">{text("failed")}</p>}
    </div>
  );
}
