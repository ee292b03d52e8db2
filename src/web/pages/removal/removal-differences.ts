import type { Difference } from "../../parts/form/stale-choice.tsx";
import { insertionText } from "../../texts/insertion.ts";
import { removalText } from "../../texts/removal.ts";
import { draftedOut, type RemovalDraft } from "./removal-draft.ts";

type Current = Readonly<Record<string, unknown>>;

/** What the person would record of a removal, and what the catheter says by now. */
export function removalDifferences(draft: RemovalDraft, current: Current, short: (at: number) => string): Difference[] {
  const when = (name: string): string | null => {
    const value = current[name];
    const at = typeof value === "string" ? Date.parse(value) : value;
    return typeof at === "number" ? short(at) : null;
  };
  const between = when("removedAfterAt");
  const theirs =
    when("removedAt") ??
    (between === null
      ? insertionText("nothing")
      : removalText("outBetween", { after: between, before: when("removedBeforeAt") ?? "" }));
  return [
    { label: removalText("out"), mine: draftedOut(draft), theirs },
    {
      label: insertionText("insertedAt"),
      mine: insertionText("nothing"),
      theirs: when("insertedAt") ?? insertionText("nothing"),
    },
  ];
}
