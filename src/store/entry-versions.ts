import { insertRows } from "./bulk.ts";
import type { Recording } from "./patients.ts";
import type { Tx } from "./store.ts";

const table = {
  table: "entry_version",
  columns: {
    kind: "text",
    entry_id: "int",
    version: "int",
    body: "text",
    replaced_at: "instant",
    replaced_by: "int",
    reason: "text",
  },
} as const;

export interface OldVersion {
  readonly kind: string;
  readonly id: number;
  readonly version: number;
  /** The entry's fields as they were. */
  readonly body: object;
}

/** Puts away what entries said before they are changed, with who changed them, when and why. */
export async function keepVersions(
  tx: Tx,
  by: Recording & { reason?: string },
  old: readonly OldVersion[],
): Promise<void> {
  await insertRows(
    tx,
    table,
    old.map((v) => [v.kind, v.id, v.version, JSON.stringify(v.body), by.now, by.personId, by.reason ?? null]),
  );
}
