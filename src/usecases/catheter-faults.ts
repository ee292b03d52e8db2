import type { Fault } from "../../shared/problems.ts";
import type { InsertionRecord, RemovalRecord } from "../../shared/records.ts";
import { boundFaults, type Charted } from "../domain/bounds/bounds.ts";

/** The measured values of a catheter: its own, and those of the records of its insertion and removal. */
export type Measured = {
  readonly sizeFr?: number | null | undefined;
  readonly balloonMl?: number | null | undefined;
} & Partial<Pick<InsertionRecord, "attempts" | "urineReturnedMl">> &
  Pick<RemovalRecord, "balloonWithdrawnMl">;

/** Faults of measured values. `at`: where the record that holds them stands in the input. */
export function catheterFaults(
  measured: Measured,
  {
    ageDays,
    confirm,
    at,
    balloonMl,
  }: { ageDays: number | null; confirm: readonly string[]; at: string; balloonMl?: number | null },
): Fault[] {
  const { sizeFr, attempts, urineReturnedMl, balloonWithdrawnMl } = measured;
  const values: Charted[] = [
    { quantity: "sizeFr", value: sizeFr, pointer: "/sizeFr" },
    { quantity: "balloonMl", value: measured.balloonMl, pointer: "/balloonMl" },
    { quantity: "attempts", value: attempts, pointer: `${at}/attempts` },
    { quantity: "urineReturnedMl", value: urineReturnedMl, pointer: `${at}/urineReturnedMl` },
    { quantity: "balloonWithdrawnMl", value: balloonWithdrawnMl, pointer: `${at}/balloonWithdrawnMl` },
  ];
  return boundFaults(values, { ageDays, confirmed: confirm, balloonMl: balloonMl ?? measured.balloonMl ?? null });
}
