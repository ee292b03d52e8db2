import type { ReactNode } from "react";
import { Page } from "../parts/page.tsx";
import { PageLink } from "../parts/page-link.tsx";
import { catalogue } from "../texts/catalogue.ts";

const text = catalogue("unknown", {
  title: "There is no such page",
  why: "The address may be written wrongly, or it belongs to a unit that you do not see.",
  home: "Go to the home page",
});

/** What an address shows at which there is no page. */
export function UnknownPage(): ReactNode {
  return (
    <Page title={text("title")}>
      <p>{text("why")}</p>
      <p>
        <PageLink to="/">{text("home")}</PageLink>
      </p>
    </Page>
  );
}
