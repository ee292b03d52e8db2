import type { Fault } from "../problems.ts";
import type { InsertionRecord, RemovalRecord } from "../records.ts";
import type { CatheterKind } from "../vocabulary.ts";
import { boundFaults, type Charted } from "./bounds.ts";

/** The measured values of a catheter: its own, and those of the records of its insertion and removal. */
export type Measured = {
  readonly sizeFr?: number | null | undefined;
  readonly balloonMl?: number | null | undefined;
} & Partial<Pick<InsertionRecord, "attempts" | "urineReturnedMl">> &
  Pick<RemovalRecord, "balloonWithdrawnMl">;

/** What is known beside the measured values. */
export interface MeasuredOf {
  readonly kind: CatheterKind;
  readonly ageDays: number | null;
  /** Pointers of unusual values that somebody has checked. */
  readonly confirm: readonly string[];
  /** Where the record that holds the values stands in the input. */
  readonly at: string;
  readonly balloonMl?: number | null;
}

/** What is usual is known of catheters through the urethra; of the others only what cannot be is refused. */
const throughTheUrethra: readonly CatheterKind[] = ["indwelling-urethral", "intermittent"];

/** Faults of measured values. */
export function catheterFaults(measured: Measured, { kind, ageDays, confirm, at, balloonMl }: MeasuredOf): Fault[] {
  const { sizeFr, attempts, urineReturnedMl, balloonWithdrawnMl } = measured;
  const values: Charted[] = [
    { quantity: "sizeFr", value: sizeFr, pointer: "/sizeFr" },
    { quantity: "balloonMl", value: measured.balloonMl, pointer: "/balloonMl" },
    { quantity: "attempts", value: attempts, pointer: `${at}/attempts` },
    { quantity: "urineReturnedMl", value: urineReturnedMl, pointer: `${at}/urineReturnedMl` },
    { quantity: "balloonWithdrawnMl", value: balloonWithdrawnMl, pointer: `${at}/balloonWithdrawnMl` },
  ];
  const known = throughTheUrethra.includes(kind) ? [] : ["/sizeFr", "/balloonMl"];
  return boundFaults(values, {
    ageDays,
    confirmed: [...confirm, ...known],
    balloonMl: balloonMl ?? measured.balloonMl ?? null,
  });
}
