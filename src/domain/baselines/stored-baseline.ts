import { type BaselineKind, baselineColumns } from "../../../shared/baseline-words.ts";
import { type Fault, Problem } from "../../../shared/problems.ts";
import type { Baseline, BaselineOrigin } from "./baseline.ts";
import { modelFromRows } from "./model-from-rows.ts";
import { ownFromRows } from "./own-from-rows.ts";
import { pooledFromRows, type TextRow } from "./pooled-from-rows.ts";

/** A baseline as it is kept: its origin, and its rows as they were given. */
export interface StoredBaseline {
  readonly kind: BaselineKind;
  readonly origin: BaselineOrigin;
  readonly rows: readonly TextRow[];
}

/**
 * The baseline that the rows make. A Problem `baseline-unusable` with every fault at once: columns that are not known,
 * numbers that are none, missing and repeated terms.
 */
export function baselineOfRows({ kind, origin, rows }: StoredBaseline): Baseline {
  const known: readonly string[] = baselineColumns[kind];
  const faults = rows.flatMap((row, at): Fault[] =>
    Object.keys(row)
      .filter((name) => !known.includes(name))
      .map((name) => ({
        code: "baseline-unusable",
        pointer: `/rows/${at}`,
        detail: `The column ${name} is not known; known are ${known.join(", ")}.`,
      })),
  );
  const [first, ...more] = faults;
  if (first) throw new Problem(first, ...more);
  if (kind === "pooled") return pooledFromRows(origin, rows);
  if (kind === "own-period") return ownFromRows(origin, rows);
  return modelFromRows(origin, kind === "infection-model" ? "infections" : "catheter-days", rows);
}
