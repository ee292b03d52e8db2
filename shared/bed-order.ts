const beds = new Intl.Collator("en-US", { numeric: true });

/** The order of beds: 2 before 10, and whoever has no bed after all beds. */
export function compareBeds(a: string | null, b: string | null): number {
  if (a === null || b === null) return Number(a === null) - Number(b === null);
  return beds.compare(a, b);
}
