import type { ReactNode } from "react";
import { goTo } from "../../parts/address.ts";
import { Hint } from "../../parts/hint.tsx";
import { Page } from "../../parts/page.tsx";
import { useSession } from "../../parts/session.tsx";
import { importsText } from "../../texts/imports.ts";
import { ImportList } from "./import-list.tsx";
import { SendFiles } from "./send-files.tsx";

/** Files are sent here, and the imports so far are listed. */
export function ImportsPage(): ReactNode {
  const { facility } = useSession();
  return (
    <Page title={importsText("title")}>
      <p>{importsText("lead")}</p>
      <Hint name="imports" title={importsText("hintTitle")}>
        {importsText("hint")}
      </Hint>
      {facility.demo ? (
        <p className="notice">{importsText("demo")}</p>
      ) : (
        <SendFiles sent={(importId) => goTo(`/imports/${importId}`)} />
      )}
      <ImportList />
    </Page>
  );
}
