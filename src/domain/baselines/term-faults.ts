import type { ModelTerm, TermCategory } from "./baseline.ts";

/** What is wrong with one term of a model: where in it, and what. */
export interface TermFault {
  readonly pointer: string;
  readonly detail: string;
}

/**
 * Everything that is wrong with a term: no name or no categories, repeated categories, coefficients that are no numbers,
 * and bands that overlap, leave a gap, or stand beside categories without a band.
 */
export function termFaults({ factor, categories }: ModelTerm): TermFault[] {
  if (factor.trim() === "") return [{ pointer: "/factor", detail: "A term has no name." }];
  if (categories.length === 0) return [{ pointer: "/categories", detail: `${factor} has no categories.` }];
  const seen = new Set<string>();
  const faults: TermFault[] = [];
  for (const [at, { name, coefficient }] of categories.entries()) {
    const pointer = `/categories/${at}`;
    if (seen.has(name)) faults.push({ pointer, detail: `${factor} has the category ${name} more than once.` });
    seen.add(name);
    if (!Number.isFinite(coefficient)) faults.push({ pointer, detail: `${factor}, ${name} has no coefficient.` });
  }
  return [...faults, ...bandFaults(factor, categories)];
}

function bandFaults(factor: string, categories: readonly TermCategory[]): TermFault[] {
  const bands = categories.flatMap(({ band }) => (band === null ? [] : [band]));
  if (bands.length === 0) return [];
  const wrong = (detail: string): TermFault[] => [{ pointer: "/categories", detail }];
  if (bands.length < categories.length) return wrong(`${factor} has categories with a band and some without.`);
  const sorted = bands.toSorted((a, b) => (a.from ?? Number.NEGATIVE_INFINITY) - (b.from ?? Number.NEGATIVE_INFINITY));
  for (const [at, { from, below }] of sorted.entries()) {
    if (from !== null && below !== null && !(from < below))
      return wrong(`${factor} has a band from ${from} to ${below}.`);
    const next = sorted[at + 1];
    if (next && next.from !== below) {
      return wrong(
        `The bands of ${factor} do not meet: one ends at ${below ?? "no end"}, the next begins at ${next.from}.`,
      );
    }
  }
  return [];
}
