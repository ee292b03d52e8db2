import type { ReactNode } from "react";
import type { readMonthSignatures } from "../../../../shared/api/month-figures.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { FigureTable } from "../../parts/figure-changes.tsx";
import { signingText as text } from "../../texts/signing.ts";

type Difference = OutputOf<typeof readMonthSignatures>["differences"][number];

/** What is no longer as it was signed, each with what was signed and what the record says now. */
export function Differences({ differences, id }: { differences: readonly Difference[]; id?: string }): ReactNode {
  const figures = differences.map(({ signed: before, now: after, ...of }) => ({ ...of, before, after }));
  return (
    <>
      <h2 id={id}>{text("changed", { count: differences.length })}</h2>
      <FigureTable figures={figures} caption={text("changedCaption")} columns={[text("was"), text("is")]} />
    </>
  );
}
