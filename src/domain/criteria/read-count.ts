import { plainCount, type Unit, unitOf, withoutUnit } from "./count-unit.ts";
import { asScientific, readNumber, readScaled } from "./plain-number.ts";

/** How much grew, in colony-forming units per milliliter. A bound gives only one side of a number. */
export type ReadCount =
  | { readonly kind: "number"; readonly cfuPerMl: number }
  | { readonly kind: "bound"; readonly relation: ">" | ">=" | "<" | "<="; readonly cfuPerMl: number }
  | { readonly kind: "range"; readonly lowCfuPerMl: number; readonly highCfuPerMl: number }
  | { readonly kind: "words"; readonly text: string }
  | { readonly kind: "missing" }
  | { readonly kind: "unreadable"; readonly text: string };

/** Amounts in words, as laboratories print them on reports without numbers. Common practice. */
const amountsInWords =
  /^((very )?(no|rare|few|scant|scanty|sparse|light|slight|moderate|heavy|many|numerous|abundant|profuse|confluent|luxuriant|significant|insignificant|mixed|occasional|small|large)( growth| amounts?| colonies| numbers?| quantity)?|[1-4]\+( growth)?|\++|tntc|too numerous to count)$/i;
/** Limits in CFU/ml that rules ask for: a count that may be meant in two ways must be on one side of each. */
const limits = [100, 100_000];
/** More than can grow in a milliliter: such a number is a slip. Dense broth holds about 10^10. Common practice. */
const mostCfuPerMl = 1e12;

/**
 * Reads a count as laboratories write it: `>100000`, `>=100,000 CFU/ml`, `10^5`, `10⁵`, `1E5`, `1 x 10^5`,
 * `50,000-100,000`, `>100k`, `100,000 or more`, `10^8 CFU/L`, `>100 x10^6 CFU/L`, `heavy growth`.
 *
 * Two conventions are read although a calculator would read them otherwise. `10E5` is 10^5: a printer without raised
 * digits writes the power so (common practice). A calculator reads ten times as much, so `10E4` may be less than 100,000
 * CFU/ml or not: where a limit is between the two readings, the count is all that either allows. `100-500,000` is 100,000 to 500,000: the thousands are written once
 * where the range then spans at most a factor of ten, as categories of laboratories do (common practice). Nothing else
 * is guessed: `10.000` (thousand or ten), `10-5,000,000` and every other form are unreadable and wait for a person.
 */
export function readCount(written: string | null): ReadCount {
  const text = (written ?? "").trim();
  if (text === "") return { kind: "missing" };
  if (amountsInWords.test(text)) return { kind: "words", text };
  const plain = plainCount(text);
  const read = readPlain(plain);
  if (read === null) return { kind: "unreadable", text };
  const scientific = asScientific(plain);
  const more = scientific === null ? null : readPlain(scientific);
  const isOpen = more !== null && limits.some((limit) => reaches(more, limit) !== reaches(read, limit));
  return isOpen ? between(read, more) : read;
}

function readPlain(plain: string): ReadCount | null {
  const read = readRange(plain) ?? readSide(plain);
  return read !== null && isPossible(read) ? read : null;
}

/** All that either reading of a count allows; `more` is ten times `less`. */
function between(less: ReadCount, more: ReadCount): ReadCount {
  if (less.kind === "number" && more.kind === "number")
    return { kind: "range", lowCfuPerMl: less.cfuPerMl, highCfuPerMl: more.cfuPerMl };
  if (less.kind === "range" && more.kind === "range")
    return { kind: "range", lowCfuPerMl: less.lowCfuPerMl, highCfuPerMl: more.highCfuPerMl };
  return less.kind === "bound" && less.relation.startsWith(">") ? less : more;
}

/** An amount of more than can grow, or a range that ends where it begins or before, is a slip. */
function isPossible(count: ReadCount): boolean {
  if (count.kind === "range") return count.lowCfuPerMl < count.highCfuPerMl && count.highCfuPerMl <= mostCfuPerMl;
  return !("cfuPerMl" in count) || count.cfuPerMl <= mostCfuPerMl;
}

/** A number stands before the "to" of a range: "up to 100,000" is a bound, and "10 to the 5th" is a power. */
const ranges = /^(?:from |between )?(\D*\d.*?)\s*(?:-| to | and )\s*(.*\d.*)$/;

function readRange(text: string): ReadCount | null {
  const [, first = "", second = ""] = ranges.exec(text) ?? [];
  if (first === "") return null;
  const [low, high] = [sideOf(first), sideOf(second)];
  if (low === null || high === null) return null;
  if (low.unit !== null && high.unit !== null && low.unit !== high.unit) return null;
  const unit: Unit = low.unit ?? high.unit ?? "ml";
  if (low.relation !== null && !low.relation.startsWith(">")) return null;
  if (high.relation !== null && !high.relation.startsWith("<")) return null;
  const numbers = bothOf(low.number, high.number);
  if (numbers === null) return null;
  const [lowest, highest] = numbers.map((value) => perMl(value, unit)) as [number, number];
  // "Less than 100,000" does not reach 100,000: laboratories count whole colonies.
  return { kind: "range", lowCfuPerMl: lowest, highCfuPerMl: high.relation === "<" ? highest - 1 : highest };
}

/** The two numbers of a range, the first perhaps with the power or the thousands of the second; null: not certain. */
function bothOf(first: string, second: string): [number, number] | null {
  const [low, high] = [readNumber(first), readNumber(second)];
  if (low === null || high === null) return null;
  if (!/^\d{1,3}$/.test(first)) return [low, high];
  const scaled = readScaled(second);
  if (scaled !== null && scaled.factor >= 1000) {
    return low < scaled.mantissa ? [low * scaled.factor, high] : null;
  }
  // Below 10, "1-10,000" may be meant as it stands: the wider reading holds both.
  if (low < 10 || low * 1000 >= high) return [low, high];
  return high <= low * 10_000 && /^\d{1,3}(,\d{3})+$/.test(second) ? [low * 1000, high] : null;
}

interface Side {
  readonly relation: Relation | null;
  readonly number: string;
  readonly unit: Unit | null;
}

type Relation = ">" | ">=" | "<" | "<=";
const before: readonly (readonly [RegExp, Relation])[] = [
  [
    /^(>=|=>|≥|≧|> ?or ?=|>\/=|(greater|more) than or equal to |equal to or (greater|more) than |at least |(not|no) (less|fewer) than |minimum )\s*/,
    ">=",
  ],
  [
    /^(<=|=<|≤|≦|< ?or ?=|<\/=|(less|fewer) than or equal to |equal to or (less|fewer) than |at most |up to |(not|no) (more|greater) than |maximum )\s*/,
    "<=",
  ],
  [/^(>|(more|greater) than |over |above |exceeding |exceeds |in excess of )\s*/, ">"],
  [/^(<|(less|fewer) than |under |below )\s*/, "<"],
];
/** A sign after a short number may be a grade: "4+". */
const after: readonly (readonly [RegExp, Relation])[] = [
  [/\s*(or|and) (more|greater|above|over|higher)$/, ">="],
  [/\s*(or|and) (less|fewer|below|under|lower)$/, "<="],
  [/(?<=\d{4}|,\d{3}|k|\^\d)\s?(\+|plus)$/, ">="],
];

function readSide(text: string): ReadCount | null {
  const side = sideOf(text);
  const value = side === null ? null : readNumber(side.number);
  if (side === null || value === null) return null;
  const cfuPerMl = perMl(value, side.unit ?? "ml");
  return side.relation === null ? { kind: "number", cfuPerMl } : { kind: "bound", relation: side.relation, cfuPerMl };
}

function sideOf(text: string): Side | null {
  const start = before.find(([form]) => form.test(text));
  const rest = start ? text.replace(start[0], "") : text;
  const end = after.find(([form]) => form.test(withoutUnit(rest)) || form.test(rest));
  if (start && end) return null;
  const relation = start?.[1] ?? end?.[1] ?? null;
  const open = end ? rest.replace(end[0], "") : rest;
  const unit = unitOf(open);
  const bare = withoutUnit(open);
  return { relation, unit, number: end ? bare.replace(end[0], "").trim() : bare };
}

function perMl(value: number, unit: Unit): number {
  if (unit === "l") return value / 1000;
  return unit === "ul" ? value * 1000 : value;
}

/**
 * Whether a count is at least a limit in CFU/ml. A bound or a laboratory's category on both sides of the limit is
 * `straddles`: such a culture is not usable unless the laboratory confirms the limit (CDC, frequently asked questions
 * on urinary tract infection). Words and missing or unreadable counts are `unknown`.
 */
export function reaches(count: ReadCount, limitCfuPerMl: number): "yes" | "no" | "straddles" | "unknown" {
  switch (count.kind) {
    case "number":
      return count.cfuPerMl >= limitCfuPerMl ? "yes" : "no";
    case "bound": {
      const { relation, cfuPerMl } = count;
      if (relation === ">" || relation === ">=") return cfuPerMl >= limitCfuPerMl ? "yes" : "straddles";
      return cfuPerMl < limitCfuPerMl || (relation === "<" && cfuPerMl === limitCfuPerMl) ? "no" : "straddles";
    }
    case "range":
      if (count.lowCfuPerMl >= limitCfuPerMl) return "yes";
      return count.highCfuPerMl < limitCfuPerMl ? "no" : "straddles";
    default:
      return "unknown";
  }
}

/** A count as a sentence shows it. */
export function countText(count: ReadCount): string {
  const shown = (value: number) => value.toLocaleString("en-US");
  switch (count.kind) {
    case "number":
      return `${shown(count.cfuPerMl)} CFU/ml`;
    case "bound":
      return `${count.relation} ${shown(count.cfuPerMl)} CFU/ml`;
    case "range":
      return `${shown(count.lowCfuPerMl)} to ${shown(count.highCfuPerMl)} CFU/ml`;
    case "missing":
      return "no count";
    default:
      return `“${count.text}”`;
  }
}
