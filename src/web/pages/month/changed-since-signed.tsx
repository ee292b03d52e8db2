import type { ReactNode } from "react";
import { readMonthSignatures } from "../../../../shared/api/month-figures.ts";
import type { Month } from "../../../../shared/day.ts";
import { useAnswer } from "../../parts/use-answer.ts";
import { Differences } from "./differences.tsx";

/** At the top of a signed month: each figure that is no longer as it was signed, with the present one beside it. */
export function ChangedSinceSigned({ month }: { month: Month }): ReactNode {
  const asked = useAnswer(readMonthSignatures, { month });
  if (asked.state !== "answered") return null;
  const { signatures, differences } = asked.value;
  if (signatures.length === 0 || differences.length === 0) return null;
  return (
    <section className="notice" aria-labelledby="changed-since-signed">
      <Differences differences={differences} id="changed-since-signed" />
    </section>
  );
}
