import type { ReactNode } from "react";
import { Page } from "../parts/page.tsx";
import { termNames, termsText, termText } from "../texts/terms.ts";

/** Every term of the trade with its definition and source. */
export function TermsPage(): ReactNode {
  return (
    <Page title={termsText("title")}>
      <p className="lead">{termsText("lead")}</p>
      <dl>
        {termNames.map((name) => (
          <div key={name} className="card" id={name}>
            <dt>
              <strong>{termText(`${name}.word`)}</strong>
            </dt>
            <dd>
              {termText(`${name}.means`)}
              <br />
              <span className="small">{termsText("source", { source: termText(`${name}.source`) })}</span>
            </dd>
          </div>
        ))}
      </dl>
    </Page>
  );
}
