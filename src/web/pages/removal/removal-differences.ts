import type { FacilityTime } from "../../parts/facility-time.ts";
import type { Difference } from "../../parts/form/stale-choice.tsx";
import { entryTime } from "../../texts/entry-time.ts";
import { insertionText } from "../../texts/insertion.ts";
import { removalText } from "../../texts/removal.ts";
import { draftedOut, type RemovalDraft } from "./removal-draft.ts";

type Current = Readonly<Record<string, unknown>>;

/** What the person would record of a removal, and what the catheter says by now. */
export function removalDifferences(draft: RemovalDraft, current: Current, time: FacilityTime): Difference[] {
  const noHour = Array.isArray(current.noHour) ? current.noHour.map(String) : [];
  const when = (name: string, field = name): string | null => {
    const value = current[name];
    const at = typeof value === "string" ? Date.parse(value) : value;
    return typeof at === "number" ? entryTime(time, { noHour }, field)(at) : null;
  };
  const isOfDay = noHour.includes("removedAt");
  const between = when("removedAfterAt");
  const theirs =
    when("removedAt") ??
    (isOfDay ? when("removedAfterAt", "removedAt") : null) ??
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
