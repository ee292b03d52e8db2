const plain = "aceinouyACEINOUY";
const accented = "åçéîñöûýÅÇÉÎÑÖÛÝ";

/** How much longer a text gets; other languages need about a third more room than English (common practice). */
const growth = 0.35;

/** A text in the pseudo-language: accents, and longer by a third. Names between braces stay. */
export function pseudo(text: string): string {
  const shown = text
    .split(/(\{\{.*?\}\})/)
    .map((part) => (part.startsWith("{{") ? part : withAccents(part)))
    .join("");
  const more = Math.ceil(text.replaceAll(/\{\{.*?\}\}/g, "").length * growth);
  return `[${shown}${" ~".repeat(Math.ceil(more / 2))}]`;
}

function withAccents(text: string): string {
  return [...text].map((letter) => accented[plain.indexOf(letter)] ?? letter).join("");
}
