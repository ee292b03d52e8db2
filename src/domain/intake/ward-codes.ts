/** A ward that a code may mean. */
export interface WardNamed {
  readonly code: string;
  readonly name: string;
}

/** A code of a file that no ward has, and the wards that it may mean. */
export interface WardQuestion {
  readonly code: string;
  readonly near: readonly WardNamed[];
}

/** Signs that look alike on paper and on screens. Common practice of identifiers read by people. */
const alike: Readonly<Record<string, string>> = { O: "0", I: "1", L: "1", S: "5", B: "8", Z: "2" };

/**
 * The questions that codes of files raise which no ward has yet: each is a new ward, or one of those that are near it.
 * `known` are wards that are recorded, or that the same files describe. Codes near no ward raise none. Of several unknown
 * codes that differ in spaces, punctuation or case alone, all but the first in the order of the alphabet are asked.
 */
export function wardQuestions(unknown: readonly string[], known: readonly WardNamed[]): WardQuestion[] {
  const inOrder = [...new Set(unknown)].sort();
  return inOrder.flatMap((code, place) => {
    const others = known.filter((ward) => ward.code !== code && isNear(code, ward));
    // A code that the files describe is a ward; the other one is asked about it.
    const isWard = known.some((ward) => ward.code === code);
    const twin = isWard ? undefined : inOrder.slice(0, place).find((other) => folded(other) === folded(code));
    const near = [...others, ...(twin === undefined ? [] : [{ code: twin, name: twin }])];
    const once = near.filter((ward, i) => near.findIndex((other) => other.code === ward.code) === i);
    return once.length === 0 ? [] : [{ code, near: once }];
  });
}

/**
 * Whether a code may be another writing of a ward's: the same but for case, spaces, punctuation and signs that look
 * alike; a letter typed twice; the ward's name; or within the edits that its length allows. Codes of up to 3 characters
 * allow two neighbors in the wrong order alone, because any other edit makes another unit of them; up to 7 characters
 * allow one edit, longer ones two.
 */
function isNear(code: string, { code: other, name }: WardNamed): boolean {
  const [one, two] = [folded(code), folded(other)];
  if (one === two || one === folded(name) || undoubled(code) === undoubled(other)) return true;
  const shorter = Math.min(one.length, two.length);
  if (shorter <= 3) return one.length === two.length && editsBetween(one, two) === 1 && sameSigns(one, two);
  return editsBetween(one, two) <= (shorter <= 7 ? 1 : 2);
}

function plain(text: string): string {
  return text
    .normalize("NFKC")
    .toUpperCase()
    .replaceAll(/[^\p{L}\p{N}]/gu, "");
}

function folded(text: string): string {
  return [...plain(text)].map((sign) => alike[sign] ?? sign).join("");
}

/** Without the repeats of a letter; a repeated digit makes another number. */
function undoubled(text: string): string {
  return plain(text).replaceAll(/(\p{L})\1+/gu, "$1");
}

function sameSigns(one: string, two: string): boolean {
  return [...one].sort().join("") === [...two].sort().join("");
}

/**
 * How many signs have to be inserted, left out, replaced or exchanged with their neighbor to make one text of the other.
 * Source: optimal string alignment, the restricted Damerau-Levenshtein distance (from memory).
 */
function editsBetween(one: string, two: string): number {
  const rows: number[][] = [Array.from({ length: two.length + 1 }, (_, j) => j)];
  const cell = (i: number, j: number): number => rows[i]?.[j] ?? 0;
  for (let i = 1; i <= one.length; i++) {
    rows.push([i]);
    for (let j = 1; j <= two.length; j++) {
      const replaced = cell(i - 1, j - 1) + (one[i - 1] === two[j - 1] ? 0 : 1);
      const exchanged = i > 1 && j > 1 && one[i - 1] === two[j - 2] && one[i - 2] === two[j - 1];
      const turned = exchanged ? cell(i - 2, j - 2) + 1 : Number.POSITIVE_INFINITY;
      rows[i]?.push(Math.min(cell(i - 1, j) + 1, cell(i, j - 1) + 1, replaced, turned));
    }
  }
  return cell(one.length, two.length);
}
