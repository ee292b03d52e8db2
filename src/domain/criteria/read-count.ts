/** How much grew, in colony-forming units per milliliter. A bound tells only on which side of a number it lies. */
export type ReadCount =
  | { readonly kind: "number"; readonly cfuPerMl: number }
  | { readonly kind: "bound"; readonly relation: ">" | ">=" | "<" | "<="; readonly cfuPerMl: number }
  | { readonly kind: "range"; readonly lowCfuPerMl: number; readonly highCfuPerMl: number }
  | { readonly kind: "words"; readonly text: string }
  | { readonly kind: "missing" }
  | { readonly kind: "unreadable"; readonly text: string };

/** Amounts in words, as laboratories print them on reports without numbers. Common practice. */
const amountsInWords =
  /^(no|rare|few|scant|sparse|light|moderate|heavy|many|abundant|profuse|significant|insignificant|mixed)( growth| amounts?)?$|^[1-4]\+$|^\++$/i;
const unit =
  /\s*(cfu|col(onies|ony)?(\s*forming\s*units?)?|organisms|germs|cells)?\s*(\/|per)\s*(ml|milliliter|l|liter)\.?\s*$/i;
const bareUnit = /\s*(cfu|col(onies|ony)?)\s*$/i;
/** More than can grow in a milliliter: such a number is a slip. Dense broth holds about 10^10. Common practice. */
const mostCfuPerMl = 1e12;

/**
 * Reads what a laboratory wrote: `>100000`, `>=100,000 CFU/ml`, `10^5`, `1E5`, `1 x 10^5`, `50,000-100,000`, `>100k`,
 * `10^8 CFU/L`, `heavy growth`. Nothing is guessed: `10.000` (thousand or ten), `10E5` (ten times 10^5, or 10^5) and
 * what has another form are unreadable and wait for a person.
 */
export function readCount(written: string | null): ReadCount {
  const text = (written ?? "").trim();
  if (text === "") return { kind: "missing" };
  if (amountsInWords.test(text)) return { kind: "words", text };
  const { bare, perMl } = withoutUnit(text);
  // A number comes before the "to" of a range: "up to 100,000" is a bound.
  const range = /^(\D*\d.*?)\s*(?:-|–|to)\s*(.+)$/i.exec(bare);
  const read = range ? readRange(range[1] ?? "", range[2] ?? "", perMl) : readSide(bare, perMl);
  return read ?? { kind: "unreadable", text };
}

function withoutUnit(text: string): { bare: string; perMl: number } {
  const found = unit.exec(text);
  if (!found) return { bare: text.replace(bareUnit, "").trim(), perMl: 1 };
  const perLiter = /^l/i.test(found[5] ?? "");
  return { bare: text.slice(0, found.index).trim(), perMl: perLiter ? 1000 : 1 };
}

function readRange(low: string, high: string, perMl: number): ReadCount | null {
  const [a, b] = [readNumber(low, perMl), readNumber(high, perMl)];
  if (a === null || b === null || a >= b) return null;
  return { kind: "range", lowCfuPerMl: a, highCfuPerMl: b };
}

const relations: readonly (readonly [RegExp, ">" | ">=" | "<" | "<="])[] = [
  [/^(>=|=>|≥|at least )\s*/i, ">="],
  [/^(<=|=<|≤|at most |up to )\s*/i, "<="],
  [/^(>|more than |greater than |over )\s*/i, ">"],
  [/^(<|less than |under )\s*/i, "<"],
];

function readSide(text: string, perMl: number): ReadCount | null {
  const [pattern, relation] = relations.find(([form]) => form.test(text)) ?? [null, null];
  const cfuPerMl = readNumber(pattern ? text.replace(pattern, "") : text, perMl);
  if (cfuPerMl === null) return null;
  return relation === null ? { kind: "number", cfuPerMl } : { kind: "bound", relation, cfuPerMl };
}

function readNumber(written: string, perMl: number): number | null {
  const value = plainNumber(written.trim());
  if (value === null) return null;
  const cfuPerMl = value / perMl;
  return cfuPerMl <= mostCfuPerMl ? cfuPerMl : null;
}

function plainNumber(text: string): number | null {
  if (/^\d+$/.test(text)) return Number(text);
  if (/^\d{1,3}(,\d{3})+$/.test(text) || /^\d{1,3}( \d{3})+$/.test(text)) return Number(text.replace(/[, ]/g, ""));
  const thousands = /^(\d{1,3})\s?k$/i.exec(text);
  if (thousands) return Number(thousands[1]) * 1000;
  const power = /^(?:(\d)(?:\.(\d))?\s*[x×*]\s*)?10\s*(?:\^|\*\*)\s*(\d{1,2})$/i.exec(text);
  // The mantissa is read as tenths, so that 1.5 x 10^5 is exact.
  if (power) return ((Number(power[1] ?? 1) * 10 + Number(power[2] ?? 0)) * 10 ** Number(power[3])) / 10;
  const scientific = /^([1-9])(?:\.(\d))?e\+?(\d{1,2})$/i.exec(text);
  if (scientific) return ((Number(scientific[1]) * 10 + Number(scientific[2] ?? 0)) * 10 ** Number(scientific[3])) / 10;
  return null;
}

/**
 * Whether a count is at least a limit in CFU/ml. A bound or a laboratory's category that lies on both sides of the limit
 * is `straddles`: such a culture is not usable unless the laboratory confirms the limit (CDC, frequently asked questions
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

/** A count as it is shown in a sentence. */
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
