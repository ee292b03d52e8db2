/** The number of line breaks in a text: CR LF is one, a lone CR and a lone LF are one each. */
export function lineBreaksIn(text: string): number {
  if (!text.includes("\n") && !text.includes("\r")) return 0;
  return text.match(/\r\n|\n|\r/g)?.length ?? 0;
}

/** Where the physical line that holds the character at `from` ends: at its line break, or at the end of the text. */
export function findLineEnd(text: string, from: number): number {
  for (let at = from; at < text.length; at++) {
    const character = text[at];
    if (character === "\n" || character === "\r") return at;
  }
  return text.length;
}
