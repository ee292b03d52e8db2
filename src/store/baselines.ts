import type { BaselineKind } from "../../shared/baseline-words.ts";
import type { StoredBaseline } from "../domain/baselines/stored-baseline.ts";
import type { Instant } from "../domain/days/day-number.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";

/** A baseline with who recorded it. */
export interface BaselineRow extends StoredBaseline {
  readonly id: number;
  readonly recordedAt: Instant;
  readonly recordedBy: number;
}

/** The baselines of a facility in the order in which they came. */
export async function baselines(read: Read, facilityId: number): Promise<BaselineRow[]> {
  const rows = await read.db.baseline.findMany({
    where: { facilityId },
    orderBy: [{ recordedAt: "asc" }, { id: "asc" }],
  });
  return rows.map(({ id, kind, rows: text, recordedAt, recordedBy, facilityId: _, ...origin }) => ({
    ...{ id, kind: kind as BaselineKind, rows: JSON.parse(text) as StoredBaseline["rows"], recordedBy },
    origin: { id: String(id), ...origin },
    recordedAt: recordedAt.getTime(),
  }));
}

/** Adds a baseline; returns its number. */
export async function addBaseline(tx: Tx, by: Recording, { kind, origin, rows }: StoredBaseline): Promise<number> {
  const id = tx.newId();
  const { name, source, year, definition, population, edition } = origin;
  await tx.db.baseline.create({
    data: {
      ...{ id, kind, name, source, year, definition, population, edition, rows: JSON.stringify(rows) },
      ...{ facilityId: by.facilityId, recordedAt: new Date(by.now), recordedBy: by.personId },
    },
  });
  return id;
}
