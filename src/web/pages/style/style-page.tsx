import type { ReactNode } from "react";
import { roundState } from "../../../../shared/round-states.ts";
import { Page } from "../../parts/page.tsx";
import { StateBadge } from "../../parts/state-badge.tsx";
import { styleText } from "../../texts/style.ts";
import { StyleAnswers } from "./style-answers.tsx";
import { StyleControls } from "./style-controls.tsx";
import { StyleMeasures } from "./style-measures.tsx";
import { StyleNotices } from "./style-notices.tsx";
import { StyleProblems } from "./style-problems.tsx";

/** Every part of the pages in every state that it can have. */
export function StylePage(): ReactNode {
  return (
    <Page title={styleText("title")}>
      <p>{styleText("intro")}</p>
      <StyleMeasures />
      <section aria-labelledby="states">
        <h2 id="states">{styleText("states")}</h2>
        <p className="row">
          {roundState.options.map((state) => (
            <StateBadge key={state} state={state} />
          ))}
        </p>
      </section>
      <StyleControls />
      <StyleNotices />
      <StyleAnswers />
      <StyleProblems />
    </Page>
  );
}
