import type { GapKind } from "../../shared/gap-words.ts";
import type { Damage } from "./damage.ts";
import type { Row } from "./folder.ts";

/** Where a reader of the month can find a loss: an item with a line of the files, or one of a unit. */
export type Trace =
  | { readonly row: Row }
  | { readonly gap: GapKind; readonly unit: string | null; readonly day?: string | undefined };

/** Something that a damaged folder says against itself. */
export interface Contradiction {
  /** What it is, for the count of contradictions by kind. */
  readonly name: string;
  /** The lines that cannot be true together. */
  readonly rows: readonly Row[];
  /** Whether a line that was so before, and is not any more, would have resolved it. */
  readonly missing: (before: Row) => boolean;
  /** Where lines of one stay come to another count: whether this line as it was, and as it is, makes the difference. */
  readonly changed?: (before: Row, after: Row | null) => boolean;
  /** Any one of these names it. */
  readonly traces: readonly Trace[];
}

/** A contradiction of lines alone: each of them may be the one that is refused or flagged. */
export function between(name: string, rows: readonly Row[], flagged: readonly Row[] = rows): Contradiction {
  return { name, rows, missing: () => false, traces: flagged.map((row) => ({ row })) };
}

/** The contradictions that a damage makes. */
export function madeBy({ before, after }: Damage, all: readonly Contradiction[]): Contradiction[] {
  return all.filter(
    ({ rows, missing, changed }) =>
      (after !== null && rows.includes(after)) || missing(before) || (changed?.(before, after) ?? false),
  );
}
