import { catalogue } from "./catalogue.ts";

const text = catalogue("inserted", {
  putIn: "put in {{when}}",
  found: "found in place on arrival",
  unknown: "insertion not known",
});

/** Since when a catheter is in, as part of a sentence. */
export function insertedWords(
  { insertedAt, inPlaceOnArrival }: { readonly insertedAt: number | null; readonly inPlaceOnArrival: boolean },
  short: (at: number) => string,
): string {
  if (insertedAt !== null) return text("putIn", { when: short(insertedAt) });
  return text(inPlaceOnArrival ? "found" : "unknown");
}
