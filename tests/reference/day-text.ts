const dayMs = 86_400_000;

/** The day number of YYYY-MM-DD, by the runtime's own calendar and not by the code under test. */
export function dayOf(text: string): number {
  const instant = Date.parse(`${text}T00:00:00Z`);
  if (Number.isNaN(instant)) throw new Error(`${text} is not a day`);
  return instant / dayMs;
}

/** The YYYY-MM-DD of a day number. */
export function textOf(day: number): string {
  return new Date(day * dayMs).toISOString().slice(0, 10);
}
