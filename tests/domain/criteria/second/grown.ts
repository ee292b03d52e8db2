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
  "something odd": { is: "unknown", same: ["something odd"] },
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

/** What the report alone decides of a urine specimen; null where what grew has to be looked at. */
export function closedOf(one: StorySpecimen, story: Story): "pending" | "negative" | "not-usable" | "set-aside" | null {
  if (one.day > (story.knownThrough ?? 60)) return "set-aside";
  if (one.status === "withdrawn") return "set-aside";
  if (story.died !== undefined && one.day > story.died) return "set-aside";
  if (one.method !== undefined && one.method !== "culture") return "not-usable";
  if (one.status === "pending" || one.status === "preliminary") return "pending";
  return (one.grew ?? []).length === 0 ? "negative" : null;
}

/** One line of a report of which everything is known. */
interface Line {
  readonly name: string;
  readonly is: "bacterium" | "yeast" | "flora";
  readonly isEnough: boolean;
}

/**
 * The bacteria with enough of each, for every way in which a report can be filled in; null where it is of no use. A name
 * that is not known may be anything, also another name of what grew beside it or in blood.
 */
export function possiblePathogens({ grew = [] }: StorySpecimen, story: Story): (readonly string[] | null)[] {
  const inBlood = (story.blood ?? []).flatMap((one) => (one.grew ?? []).map(([name]) => name));
  const found = new Map<string, readonly string[] | null>();
  for (const lines of filledIn(grew, [...grew.map(([name]) => name), ...inBlood])) {
    const pathogens = pathogensIn(lines);
    found.set(JSON.stringify(pathogens), pathogens);
  }
  return [...found.values()];
}

function pathogensIn(lines: readonly Line[]): string[] | null {
  if (lines.some(({ is }) => is === "flora") || new Set(lines.map(({ name }) => name)).size > 2) return null;
  const enough = lines.filter(({ is, isEnough }) => is === "bacterium" && isEnough).map(({ name }) => name);
  return enough.length === 0 ? null : [...new Set(enough)].sort();
}

function* filledIn(grew: NonNullable<StorySpecimen["grew"]>, around: readonly string[]): Generator<Line[]> {
  const rare = [...new Set(grew.map(([name]) => name))].filter((name) => organisms[name]?.is === "unknown");
  for (const meaning of meanings(rare, around)) {
    yield* withAmounts(grew.map(([name, count]) => ({ ...meaningOf(name, meaning), amount: counts[count ?? ""] })));
  }
}

type Meaning = Pick<Line, "name" | "is">;

function meaningOf(name: string, meaning: ReadonlyMap<string, Meaning>): Meaning {
  return meaning.get(name) ?? { name, is: kindOf(name) };
}

function kindOf(name: string): Line["is"] {
  const is = organisms[name]?.is ?? "bacterium";
  return is === "unknown" ? "bacterium" : is;
}

function* meanings([name, ...rest]: readonly string[], around: readonly string[]): Generator<Map<string, Meaning>> {
  if (name === undefined) {
    yield new Map();
    return;
  }
  // Another name that is not known either may be the same bacterium.
  const known = around.filter((other) => other !== name);
  const own = (["bacterium", "yeast", "flora"] as const).map((is) => ({
    name: is === "bacterium" ? name : `${is} ${name}`,
    is,
  }));
  for (const others of meanings(rest, around)) {
    for (const one of [...own, ...known.map((other) => ({ name: other, is: kindOf(other) }))])
      yield new Map([...others, [name, one]]);
  }
}

function* withAmounts(
  lines: readonly (Meaning & { amount: "enough" | "few" | "unclear" | "unknown" | undefined })[],
): Generator<Line[]> {
  const [first, ...rest] = lines;
  if (!first) {
    yield [];
    return;
  }
  const { amount, name, is } = first;
  for (const isEnough of amount === "enough" ? [true] : amount === "few" ? [false] : [true, false]) {
    for (const others of withAmounts(rest)) yield [{ name, is, isEnough }, ...others];
  }
}

/** Whether a specimen of blood grew a bacterium that can be one of these. */
export function growsOneOf(one: StorySpecimen, names: readonly string[]): string[] {
  return (one.grew ?? [])
    .map(([name]) => name)
    .filter(
      (name) => organisms[name]?.is === "bacterium" && names.some((other) => organisms[name]?.same.includes(other)),
    );
}
