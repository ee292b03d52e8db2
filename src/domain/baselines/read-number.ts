/** A cell as a number; null where it is empty, NaN where it is no plain decimal number. */
export function readNumber(text: string | undefined): number | null {
  const trimmed = text?.trim() ?? "";
  if (trimmed === "") return null;
  return /^[+-]?\d+(\.\d+)?$/.test(trimmed) ? Number(trimmed) : Number.NaN;
}
