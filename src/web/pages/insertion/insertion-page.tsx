import type { ReactNode } from "react";
import { Page } from "../../parts/page.tsx";
import { StayPage } from "../../parts/patient/stay-page.tsx";
import type { PageProps } from "../../routes.ts";
import { insertionText } from "../../texts/insertion.ts";
import { InsertionFlow } from "./insertion-flow.tsx";

/** The guided record of an insertion, in the order of the bedside. */
export function InsertionPage({ found, question }: PageProps): ReactNode {
  return (
    <Page title={insertionText("title")}>
      <StayPage found={found}>{(shown) => <InsertionFlow {...shown} step={question.get("step")} />}</StayPage>
    </Page>
  );
}
