/** The instant of `YYYY-MM-DD HH:MM[:SS[.mmm]]` in UTC, by the runtime's own calendar. */
export function utc(text: string): number {
  const instant = Date.parse(`${text.replace(" ", "T")}Z`);
  if (Number.isNaN(instant)) throw new Error(`${text} is not a time`);
  return instant;
}
