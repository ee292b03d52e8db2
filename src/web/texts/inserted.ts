import { catalogue } from "./catalogue.ts";

const text = catalogue("inserted", {
  insertedAt: "inserted {{when}}",
  found: "found in place on arrival",
  unknown: "insertion not known",
});

/** Since when a catheter is in place, as part of a sentence. */
export function insertedWords(
  { insertedAt, inPlaceOnArrival }: { readonly insertedAt: number | null; readonly inPlaceOnArrival: boolean },
  short: (at: number) => string,
): string {
  if (insertedAt !== null) return text("insertedAt", { when: short(insertedAt) });
  return text(inPlaceOnArrival ? "found" : "unknown");
}
