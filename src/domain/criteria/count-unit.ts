/** The volume that a count is given for: milliliter, liter or microliter. */
export type Unit = "ml" | "l" | "ul";

const thing =
  "(?:cfus?|c\\.f\\.u\\.?|ufc|kbe|col|colonies|colony|orgs?|organisms?|bacteria|germs|cells)?(?:\\s*forming\\s*units?)?";
const volume = "(ml|mls|cc|millilit(?:er|re)s?|l|lit(?:er|re)s?|ul|µl|μl|mcl|microlit(?:er|re)s?)";
const withVolume = new RegExp(
  `(?:(?<![a-z])${thing})?\\s*(?:/|(?<![a-z])per)\\s*${volume}\\.?(?:\\s+(?:of\\s+)?urine)?$`,
);
const withoutVolume = /\s*(cfus?|col|colonies|colony|colony forming units)$/;

const raised: Readonly<Record<string, string>> = Object.fromEntries(
  [..."⁰¹²³⁴⁵⁶⁷⁸⁹"].map((sign, digit) => [sign, `${digit}`]),
);

/** A count in one spelling: lower case, raised digits as a power, one kind of dash, cross and blank. */
export function plainCount(text: string): string {
  return text
    .replace(/[⁰¹²³⁴-⁹]+/g, (digits) => `^${[...digits].map((digit) => raised[digit]).join("")}`)
    .toLowerCase()
    .replace(/[‐‑‒–—−]/g, "-")
    .replace(/[×✕]/g, "x")
    .replace(/\s+/g, " ")
    .replace(/^(colony )?counts?\s*[:=]\s*/, "")
    .replace(/^=(?![<>])\s*/, "")
    .replace(/(?<=\d)\.$/, "")
    .trim();
}

/** The volume that is written at the end of a count; null where none is. */
export function unitOf(text: string): Unit | null {
  const [, written] = withVolume.exec(text) ?? [];
  if (written === undefined) return null;
  if (/^l/.test(written)) return "l";
  return /^(u|µ|μ|mc|micro)/.test(written) ? "ul" : "ml";
}

/** A count without what was counted and the volume. */
export function withoutUnit(text: string): string {
  const found = withVolume.exec(text);
  return (found ? text.slice(0, found.index) : text.replace(withoutVolume, "")).trim();
}
