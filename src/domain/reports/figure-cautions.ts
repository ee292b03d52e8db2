import type { FigureFacts } from "./figure-facts.ts";

/** What a reader must know before using rates and ratios, in sentences. */
export function figureCautions({ days, wards, comparison }: FigureFacts): string[] {
  const codes = new Map(days.wards.map(({ wardId, code }) => [wardId, code]));
  const unwatched = wards.flatMap(({ wardId, infections }) =>
    infections.value === null ? (codes.get(wardId) ?? []) : [],
  );
  const sentences = [
    "One month of one unit has few infections: look at the width of the interval before you call a unit different.",
    "Catheter-days of one patient follow each other, so the true uncertainty of a utilization ratio is larger than its interval.",
  ];
  if (unwatched.length > 0) {
    sentences.push(`Infections are not known, and rates of all units leave these out: ${unwatched.join(", ")}.`);
  }
  const points = [...new Set(wards.flatMap(({ nonDefault }) => nonDefault))];
  if (points.length > 0)
    sentences.push(`Non-default reading of the definitions, so no SIR against other hospitals. ${points.join(". ")}.`);
  const { infections, catheterDays } = comparison;
  for (const used of [infections, catheterDays]) {
    if (used === null) continue;
    const { name, year, definition, population } = used.baseline.origin;
    sentences.push(`Compared with ${name} (${year}; ${population}). ${definition}.`);
  }
  // Two baselines of one origin are one sentence.
  return [...new Set(sentences)];
}
