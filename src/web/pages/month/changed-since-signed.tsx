import type { ReactNode } from "react";
import type { readMonthSignatures } from "../../../../shared/api/month-figures.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import type { Asked } from "../../parts/use-answer.ts";
import { Differences } from "./differences.tsx";
import { MonthChanges } from "./month-changes.tsx";

/** Who signed a month and what has changed since, as the page asks for it once. */
export type AskedSignatures = Asked<OutputOf<typeof readMonthSignatures>>;

/**
 * At the top of a signed month: each figure that is no longer as it was signed, with the present one beside it, and what
 * was recorded that changed it.
 */
export function ChangedSinceSigned({ asked }: { asked: AskedSignatures }): ReactNode {
  if (asked.state !== "answered") return null;
  const { differences, changes } = asked.value;
  return (
    <>
      {differences.length > 0 && (
        <section className="notice" aria-labelledby="changed-since-signed">
          <Differences differences={differences} id="changed-since-signed" />
        </section>
      )}
      <MonthChanges changes={changes} />
    </>
  );
}
