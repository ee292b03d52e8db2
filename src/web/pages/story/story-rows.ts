import type { readCatheter } from "../../../../shared/api/catheters.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import type { Correction } from "../../parts/corrections.tsx";
import type { FacilityTime } from "../../parts/facility-time.ts";
import { entryTime } from "../../texts/entry-time.ts";
import { removalText } from "../../texts/removal.ts";
import { storyText } from "../../texts/story.ts";

/** A catheter with its days and everything that was written about it. */
export type Story = OutputOf<typeof readCatheter>;
export type Note = Story["notes"][number];

/** When it was put in, in words. */
export function sinceWords(story: Story, time: FacilityTime): string {
  const { insertedAt, inPlaceOnArrival } = story;
  if (insertedAt !== null) return entryTime(time, story, "insertedAt")(insertedAt);
  return storyText(inPlaceOnArrival ? "found" : "unknown");
}

/** When it came out, in words; null while it is in. */
export function outWords(story: Story, time: FacilityTime): string | null {
  const { removedAt, removedAfterAt, removedBeforeAt } = story;
  const { short } = time;
  if (removedAt !== null) return short(removedAt);
  if (removedAfterAt === null || removedBeforeAt === null) return null;
  if (story.noHour?.includes("removedAt")) return entryTime(time, story, "removedAt")(removedAfterAt);
  return removalText("outBetween", { after: short(removedAfterAt), before: short(removedBeforeAt) });
}

/** The corrections of one entry, such as `note 12`, oldest first. */
export function correctionsOf(story: Story, entry: string): readonly Correction[] {
  return story.corrections.filter((correction) => correction.entry === entry);
}
