import type { Story, StorySpecimen } from "../../../../src/domain/criteria/story.ts";

// A separate implementation of the European definitions, written from the rules alone: nothing of src but types is used.
// Organisms and counts of random stories are judged by hand.

interface Kind {
  readonly is: "bacterium" | "yeast" | "parasite" | "flora" | "unknown";
  /** Gram-negative or Staphylococcus saprophyticus; null: it may be, for all that the name says. */
  readonly uropathogen: boolean | null;
  /** Other names that can be the same. */
  readonly same: readonly string[];
}

export const europeanOrganisms: Readonly<Record<string, Kind>> = {
  "Escherichia coli": { is: "bacterium", uropathogen: true, same: [] },
  "Klebsiella pneumoniae": { is: "bacterium", uropathogen: true, same: ["Klebsiella species"] },
  "Klebsiella species": { is: "bacterium", uropathogen: true, same: ["Klebsiella pneumoniae"] },
  "Enterococcus faecalis": { is: "bacterium", uropathogen: false, same: [] },
  "Staphylococcus saprophyticus": { is: "bacterium", uropathogen: true, same: ["CoNS"] },
  "Staphylococcus epidermidis": { is: "bacterium", uropathogen: false, same: ["CoNS"] },
  CoNS: {
    is: "bacterium",
    uropathogen: null,
    same: ["Staphylococcus saprophyticus", "Staphylococcus epidermidis"],
  },
  "Candida albicans": { is: "yeast", uropathogen: false, same: [] },
  "Trichomonas vaginalis": { is: "parasite", uropathogen: false, same: [] },
  "mixed flora": { is: "flora", uropathogen: false, same: [] },
  "something rare": { is: "unknown", uropathogen: null, same: [] },
  "something odd": { is: "unknown", uropathogen: null, same: [] },
};

const anything = [50, 1000, 500_000];

/** Numbers per milliliter that a count of a report can stand for, one of every stretch that the rules tell apart. */
export const europeanCounts: Readonly<Record<string, readonly number[]>> = {
  "50": [50],
  "100": [100],
  "1000": [1000],
  "<1000": [50, 500],
  "50000": [50_000],
  "75,000-100,000": [80_000, 100_000],
  ">50000": [60_000, 500_000],
  "10^5": [100_000],
  ">100000": [500_000],
  ">=100000": [500_000],
  "heavy growth": anything,
  "10.000": anything,
  "": anything,
};

/** Whether a report or a sign of a day can be known and used on the day of the question. */
export function isKnown(day: number, { knownThrough = 60, died = 99 }: Story): boolean {
  return day <= knownThrough && day <= died;
}

/** What the report alone decides of a urine specimen; null where what grew has to be looked at. */
export function europeanClosed(
  one: StorySpecimen,
  story: Story,
): "pending" | "negative" | "not-usable" | "set-aside" | null {
  const { status = "final", method = "culture", grew = [] } = one;
  if (!isKnown(one.day, story) || status === "withdrawn") return "set-aside";
  if (method !== "culture") return "not-usable";
  if (status === "pending" || status === "preliminary") return "pending";
  return grew.length === 0 ? "negative" : null;
}

/** Whether a culture can be used, for every way in which its names and numbers can be. */
export function possibleUse({ grew = [] }: StorySpecimen): ReadonlySet<boolean> {
  const names = [...new Set(grew.map(([name]) => name))];
  let ways: (readonly { name: string; isEnough: boolean }[])[] = [[]];
  for (const [name, count] of grew) {
    const enough = new Set((europeanCounts[count ?? ""] ?? []).map((number) => number >= 100_000));
    ways = ways.flatMap((way) => [...enough].map((isEnough) => [...way, { name, isEnough }]));
  }
  const rare = names.filter((name) => europeanOrganisms[name]?.is === "unknown");
  return new Set(ways.flatMap((way) => renamed(way, rare, names)).map(isOfUse));
}

/** A name that is not known is another organism, flora, or one of the other names. */
function renamed<One extends { name: string }>(
  way: readonly One[],
  [name, ...rest]: readonly string[],
  names: readonly string[],
): (readonly One[])[] {
  if (name === undefined) return [way];
  const meanings = [name, "mixed flora", ...names.filter((other) => other !== name)];
  return renamed(way, rest, names).flatMap((others) =>
    meanings.map((meaning) => others.map((one, i) => (way[i]?.name === name ? { ...one, name: meaning } : one))),
  );
}

function isOfUse(way: readonly { name: string; isEnough: boolean }[]): boolean {
  if (way.some(({ name }) => europeanOrganisms[name]?.is === "flora")) return false;
  return new Set(way.map(({ name }) => name)).size <= 2 && way.some(({ isEnough }) => isEnough);
}
