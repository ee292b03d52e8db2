import type { ReactNode } from "react";
import { monthWords } from "../../parts/words.ts";
import { importText } from "../../texts/imports.ts";
import type { ImportTold } from "./import-page.tsx";

const kinds = ["wards", "stays", "moves", "catheters", "reviews", "specimens", "signs"] as const;

/** How many entries storing the lines would make and change, and which signed months these touch. */
export function Effects(props: {
  effects: NonNullable<ImportTold["effects"]>;
  signedMonths: ImportTold["signedMonths"];
}): ReactNode {
  const { effects, signedMonths } = props;
  const shown = kinds.filter((kind) => effects[kind].added + effects[kind].changed > 0);
  return (
    <section aria-labelledby="effects">
      <h2 id="effects">{importText("effectsTitle")}</h2>
      {shown.length === 0 ? (
        <p>{importText("effectsNone")}</p>
      ) : (
        <table className="ledger inner">
          <thead>
            <tr>
              <th scope="col">{importText("kind")}</th>
              <th scope="col" className="figure">
                {importText("added")}
              </th>
              <th scope="col" className="figure">
                {importText("changed")}
              </th>
            </tr>
          </thead>
          <tbody>
            {shown.map((kind) => (
              <tr key={kind}>
                <th scope="row">{importText(kind)}</th>
                <td className="figure">{effects[kind].added}</td>
                <td className="figure">{effects[kind].changed}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {signedMonths.length > 0 && (
        <div className="notice">
          <p>
            <strong>{importText("signedTitle", { months: signedMonths.map(monthWords).join(", ") })}</strong>
          </p>
          <p>{importText("signedDetail")}</p>
        </div>
      )}
    </section>
  );
}
