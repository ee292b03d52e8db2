import { type HeldLine, rejectedLines } from "./line-gaps.ts";

/** How many lines of a file were rejected, of how many that were sent. */
export interface Rejected {
  readonly rejected: number;
  readonly sent: number;
}

/** What is missing from the counts of a ward, or of all wards, because lines were rejected. */
export interface MissingLines {
  readonly moves: Rejected;
  readonly catheters: Rejected;
}

/** Of one ward those lines that name it are counted, of all wards also those of which no ward can be read. */
export function missingLines(
  lines: readonly HeldLine[],
  recorded: { readonly moves: number; readonly catheters: number },
  ward?: string,
): MissingLines {
  const of = (file: "moves.csv" | "catheters.csv", stored: number): Rejected => {
    const found = rejectedLines(lines, file, ward).filter(({ wards }) => ward === undefined || wards !== null);
    return { rejected: found.length, sent: found.length + stored };
  };
  return { moves: of("moves.csv", recorded.moves), catheters: of("catheters.csv", recorded.catheters) };
}

/** Whether every line that could tell of a catheter was rejected: no catheter-day is then no zero. */
export function areAllRejected({ rejected, sent }: Rejected): boolean {
  return rejected > 0 && rejected === sent;
}

/** What is missing in words, such as "missing: 2 of 5 catheter lines rejected"; empty when nothing is. */
export function missingText(missing: MissingLines | undefined): string {
  if (missing === undefined) return "";
  const say = ({ rejected, sent }: Rejected, what: string): string[] =>
    rejected === 0 ? [] : [`missing: ${rejected} of ${sent} ${what} ${sent === 1 ? "line" : "lines"} rejected`];
  return [...say(missing.catheters, "catheter"), ...say(missing.moves, "move")].join("; ");
}
