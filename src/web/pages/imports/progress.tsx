import type { ReactNode } from "react";
import { importText } from "../../texts/imports.ts";
import type { ImportTold } from "./import-page.tsx";

/** How far the work on an import is. Readers of screens are told as it goes on. */
export function Progress({ told }: { told: ImportTold }): ReactNode {
  const { done = 0, total = null } = told.progress ?? {};
  return (
    <section aria-label={importText("progress")}>
      <p role="status">{stepWords(told)}</p>
      <progress
        aria-label={importText("progress")}
        {...(total === null || total === 0 ? {} : { max: total, value: done })}
      />
      <p className="small">{importText("leave")}</p>
    </section>
  );
}

function stepWords({ state, progress }: ImportTold): string {
  if (progress === null) return importText("waiting");
  const { done, total } = progress;
  if (total === null) return importText("reading", { done });
  return importText(state === "applying" ? "storing" : "checking", { done, total });
}
