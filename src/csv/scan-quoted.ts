/** Longer than any text that is accepted: a quote that is still open then was never meant to hold so much. */
export const quotedCharactersMost = 10_000;

/** A quoted cell's text with the place of the delimiter or line end behind it. */
interface QuotedCell {
  readonly value: string;
  readonly end: number;
}

/** What is wrong with the quotes of a cell. */
interface QuoteTrouble {
  readonly code: "csv-quote" | "csv-quote-open";
  readonly detail: string;
}

/** Where a quoted cell begins, at its opening quote. */
interface QuotedPlace {
  readonly text: string;
  readonly start: number;
  /** The delimiter's character code. */
  readonly delimiter: number;
  readonly isLast: boolean;
}

const open: QuoteTrouble = { code: "csv-quote-open", detail: "The double quote that is opened here is never closed." };
const followed: QuoteTrouble = {
  code: "csv-quote",
  detail: "A double quote is followed by text instead of a delimiter.",
};

/**
 * Reads a quoted cell (RFC 4180, section 2, rules 5 to 7; white space may follow the closing quote). Null when the text
 * ends before that is known and more may follow. A cell of more than 10,000 characters counts as never closed.
 */
export function scanQuoted(place: QuotedPlace): QuotedCell | QuoteTrouble | null {
  const { text, start, isLast } = place;
  let from = start + 1;
  for (;;) {
    const quote = text.indexOf('"', from);
    const length = (quote < 0 ? text.length : quote) - start;
    if (length > quotedCharactersMost) return open;
    if (quote < 0) return isLast ? open : null;
    if (text[quote + 1] !== '"') return close(place, quote);
    from = quote + 2;
  }
}

function close(place: QuotedPlace, quote: number): QuotedCell | QuoteTrouble | null {
  const { text, start, delimiter, isLast } = place;
  let end = quote + 1;
  while (text[end] === " " || (text[end] === "\t" && delimiter !== 9)) end += 1;
  // A quote at the end of the text may be the first half of a doubled one.
  if (end >= text.length && !isLast) return null;
  const isEnd = end >= text.length || text.charCodeAt(end) === delimiter || text[end] === "\n" || text[end] === "\r";
  if (!isEnd) return followed;
  return { value: text.slice(start + 1, quote).replaceAll('""', '"'), end };
}
