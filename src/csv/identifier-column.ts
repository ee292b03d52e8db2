/** Where a value was seen. */
export interface Seen {
  readonly file: string;
  readonly line: number;
}

/** How many different numbers of a column are compared one by one; the lengths of all others are still compared. */
const numbersMost = 100_000;
/** Digits that a spreadsheet keeps of a number (IEEE 754 double precision, as spreadsheets print it). */
const digitsKept = 15;

interface Pair {
  bare: Seen | null;
  padded: Seen | null;
}

/** What one column of identifiers looks like over all files; its memory does not grow with the files. */
export class IdentifierColumn {
  /** By the number without its zeros at the front: where it was first seen without such zeros, and with them. */
  readonly #pairs = new Map<string, Pair>();
  /** The lengths of numbers that have zeros at the front. */
  readonly #paddedLengths = new Set<number>();
  /** The first number of each length that has none. */
  readonly #bareOfLength = new Map<number, Seen>();
  #pairCount = 0;
  #firstPair: readonly [Seen, Seen] | null = null;
  #longNumbers = 0;
  #longNumbersCut = 0;

  /** Looks at an identifier; only whole numbers matter. */
  add(text: string, seen: Seen): void {
    if (!isNumber(text)) return;
    const bare = text.replace(/^0+(?=.)/, "");
    if (bare === text) this.#addBare(text, seen);
    else this.#paddedLengths.add(text.length);
    this.#pair(bare, bare === text ? "bare" : "padded", seen);
  }

  /** The two places of the first numbers that differ by zeros at the front alone, and how many such numbers there are. */
  get pairs(): { count: number; first: readonly [Seen, Seen] } | null {
    return this.#firstPair === null ? null : { count: this.#pairCount, first: this.#firstPair };
  }

  /** The length of the numbers with zeros at the front, and a shorter number; null unless they are all of one length. */
  get shorter(): { length: number; first: Seen } | null {
    const [length, another] = this.#paddedLengths;
    if (length === undefined || another !== undefined) return null;
    const shorter = [...this.#bareOfLength].find(([other]) => other < length);
    return shorter === undefined ? null : { length, first: shorter[1] };
  }

  /** True when several numbers are longer than 15 digits and none has anything but zeros behind the fifteenth. */
  get isCut(): boolean {
    return this.#longNumbers > 1 && this.#longNumbers === this.#longNumbersCut;
  }

  #addBare(text: string, seen: Seen): void {
    if (!this.#bareOfLength.has(text.length)) this.#bareOfLength.set(text.length, seen);
    if (text.length <= digitsKept) return;
    this.#longNumbers += 1;
    if (/^0+$/.test(text.slice(digitsKept))) this.#longNumbersCut += 1;
  }

  #pair(bare: string, form: keyof Pair, seen: Seen): void {
    const pair = this.#pairs.get(bare);
    if (pair === undefined) {
      if (this.#pairs.size >= numbersMost) return;
      const first: Pair = { bare: null, padded: null };
      first[form] = seen;
      this.#pairs.set(ownCopy(bare), first);
      return;
    }
    if (pair[form] !== null) return;
    pair[form] = seen;
    if (pair.bare === null || pair.padded === null) return;
    this.#pairCount += 1;
    this.#firstPair ??= [pair.bare, pair.padded];
  }
}

function isNumber(text: string): boolean {
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code < 48 || code > 57) return false;
  }
  return text.length > 0;
}

/** A cut text keeps the whole block alive from which it was cut; a copy does not. */
function ownCopy(digits: string): string {
  return Buffer.from(digits, "latin1").toString("latin1");
}
