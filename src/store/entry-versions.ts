import type { Instant } from "../domain/days/day-number.ts";
import { insertRows } from "./bulk.ts";
import { inChunks } from "./in-chunks.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";

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

/** A version that was replaced, as it is shown: instants as text. */
export interface ReplacedVersion {
  readonly entry: string;
  readonly version: number;
  readonly replacedAt: Instant;
  readonly replacedBy: number;
  readonly reason: string | null;
  readonly before: Record<string, unknown>;
}

/** What these entries of one kind said before they were changed, oldest first. */
export async function oldVersions(read: Read, kind: string, entryIds: readonly number[]): Promise<ReplacedVersion[]> {
  const rows = await inChunks(entryIds, (chunk) =>
    read.db.entryVersion.findMany({
      where: { kind, entryId: { in: chunk } },
      orderBy: [{ replacedAt: "asc" }, { version: "asc" }],
    }),
  );
  return rows.map(({ entryId, version, replacedAt, replacedBy, reason, body }) => ({
    ...{ entry: `${kind} ${entryId}`, version, replacedBy, reason },
    replacedAt: replacedAt.getTime(),
    before: instantsAsText(JSON.parse(body) as Record<string, unknown>),
  }));
}

function instantsAsText(body: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(body).map(([name, value]) => {
      const isInstant = typeof value === "number" && (name === "at" || name.endsWith("At"));
      return [name, isInstant ? new Date(value).toISOString() : value];
    }),
  );
}
