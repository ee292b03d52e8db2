import type { Story, StorySpecimen } from "../../../../src/domain/criteria/story.ts";

// A separate implementation, written from the rules alone: nothing of src but types is used here. The organisms and
// counts are those that random stories are made of, judged by hand.

/** The organisms of random stories: what each is, and with which others it can be the same. */
export const organisms: Readonly<
  Record<string, { is: "bacterium" | "yeast" | "flora" | "unknown"; same: readonly string[]; skin?: true }>
> = {
  "Escherichia coli": { is: "bacterium", same: ["Escherichia coli"] },
  "Klebsiella pneumoniae": { is: "bacterium", same: ["Klebsiella pneumoniae", "Klebsiella species"] },
  "Klebsiella species": { is: "bacterium", same: ["Klebsiella species", "Klebsiella pneumoniae"] },
  "Staphylococcus epidermidis": { is: "bacterium", same: ["Staphylococcus epidermidis", "CoNS"], skin: true },
  CoNS: { is: "bacterium", same: ["CoNS", "Staphylococcus epidermidis"], skin: true },
  "Candida albicans": { is: "yeast", same: ["Candida albicans"] },
  "mixed flora": { is: "flora", same: [] },
  "something rare": { is: "unknown", same: ["something rare"] },
};

/** The counts of random stories: at least 100,000, less, on both sides, or nobody knows. */
export const counts: Readonly<Record<string, "enough" | "few" | "unclear" | "unknown">> = {
  ">100000": "enough",
  "10^5": "enough",
  "100,000 CFU/ml": "enough",
  "10^8 CFU/L": "enough",
  "50000": "few",
  "<100000": "few",
  "75,000-100,000": "unclear",
  ">50000": "unclear",
  "heavy growth": "unknown",
  "10.000": "unknown",
  "": "unknown",
};

/** What a urine specimen of a story is worth. */
export function worthOf(
  one: StorySpecimen,
  story: Story,
): "usable" | "pending" | "negative" | "not-usable" | "cannot-tell" | "set-aside" {
  if (one.day > (story.knownThrough ?? 60)) return "set-aside";
  if (one.status === "withdrawn") return "set-aside";
  if (story.died !== undefined && one.day > story.died) return "set-aside";
  if (one.method !== undefined && one.method !== "culture") return "not-usable";
  if (one.status === "pending" || one.status === "preliminary") return "pending";
  const grew = one.grew ?? [];
  if (grew.length === 0) return "negative";
  const kinds = grew.map(([name]) => organisms[name]?.is);
  if (kinds.includes("flora")) return "not-usable";
  if (new Set(grew.map(([name]) => name)).size > 2) return "not-usable";
  if (kinds.includes("unknown")) return "cannot-tell";
  const amounts = grew.filter((_, i) => kinds[i] === "bacterium").map(([, count]) => counts[count ?? ""]);
  if (amounts.includes("enough")) return "usable";
  return amounts.includes("unknown") ? "cannot-tell" : "not-usable";
}

/** The names of the bacteria of a urine specimen with enough of each. */
export function pathogensOf(one: StorySpecimen): string[] {
  return (one.grew ?? [])
    .filter(([name, count]) => organisms[name]?.is === "bacterium" && counts[count ?? ""] === "enough")
    .map(([name]) => name);
}

/** Whether a specimen of blood grew a bacterium that can be one of these. */
export function growsOneOf(one: StorySpecimen, names: readonly string[]): string[] {
  return (one.grew ?? [])
    .map(([name]) => name)
    .filter(
      (name) => organisms[name]?.is === "bacterium" && names.some((other) => organisms[name]?.same.includes(other)),
    );
}
