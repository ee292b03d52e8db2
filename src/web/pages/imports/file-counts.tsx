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
        <table className="ledger">
          <thead>
            <tr>
              <th scope="col">{importText("file")}</th>
              {([isTried ? "columnWaiting" : "columnStored", "columnUnchanged", "columnRefused"] as const).map(
                (name) => (
                  <th scope="col" className="figure" key={name}>
                    {importText(name)}
                  </th>
                ),
              )}
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

function Figures({ counts, isTried }: { counts: Counts; isTried: boolean }): ReactNode {
  const { waiting, accepted, marked, unchanged, refused } = counts;
  return (
    <>
      <td className="figure">{isTried ? waiting : accepted + marked}</td>
      <td className="figure">{unchanged}</td>
      <td className="figure">{refused}</td>
    </>
  );
}
