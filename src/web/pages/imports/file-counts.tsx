import type { ReactNode } from "react";
import { Said } from "../../parts/said.tsx";
import { importText } from "../../texts/imports.ts";
import type { ImportTold } from "./import-page.tsx";

type Counts = ImportTold["counts"];

/** How many lines of each file are to be stored, were stored, were known, and were refused. */
export function FileCounts({ told }: { told: ImportTold }): ReactNode {
  const { files, counts, state } = told;
  const isTried = state === "checked";
  return (
    <section aria-labelledby="files-found">
      <h2 id="files-found">{importText(isTried ? "filesTriedTitle" : "filesTitle")}</h2>
      {files.length === 0 ? (
        <p className="notice">{importText("noLines")}</p>
      ) : (
        <table className="ledger rows-read">
          <thead>
            <tr>
              <th scope="col">{importText("file")}</th>
              {columns(isTried).map((name) => (
                <th scope="col" className="figure" key={name}>
                  {importText(name)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {files.map(({ file, counts: own }) => (
              <tr key={file}>
                <th scope="row">
                  <Said>{file}</Said>
                </th>
                <Figures counts={own} isTried={isTried} />
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">{importText("allFiles")}</th>
              <Figures counts={counts} isTried={isTried} />
            </tr>
          </tfoot>
        </table>
      )}
    </section>
  );
}

function columns(isTried: boolean) {
  const stored = isTried ? "columnWaiting" : "columnStored";
  return ["columnRows", stored, "columnUnchanged", "columnRefused", "columnBlank"] as const;
}

/** The rows of a file add up: what is stored, was seen before, was rejected (also when dropped since) or is blank. */
function Figures({ counts, isTried }: { counts: Counts; isTried: boolean }): ReactNode {
  const { waiting, accepted, marked, unchanged, refused, dropped, blank } = counts;
  const stored = isTried ? waiting : accepted + marked;
  return (
    <>
      <td className="figure">{stored + unchanged + refused + dropped + blank}</td>
      <td className="figure">{stored}</td>
      <td className="figure">{unchanged}</td>
      <td className="figure">{refused + dropped}</td>
      <td className="figure">{blank}</td>
    </>
  );
}
