import type { Instant } from "../domain/days/day-number.ts";
import type { Audit } from "./audit.ts";
import type { Prisma } from "./generated/sqlite/client.ts";
import type { Recording } from "./patients.ts";
import type { Sql } from "./sql.ts";
import type { Trace } from "./trace.ts";

export type DatabaseKind = "sqlite" | "postgresql";

/** A snapshot to read from. */
export interface Read {
  readonly kind: DatabaseKind;
  /** Only this room may use it: elsewhere it is passed on unopened. */
  readonly db: Prisma.TransactionClient;
  /** Statements of this room, in the same snapshot or transaction. */
  readonly sql: Sql;
}

/** One transaction: all of it is stored, or nothing. */
export interface Tx extends Read {
  /** An id that was never used. Throws when more were drawn than the transaction asked for. */
  newId(): number;
  /** The id of an entry of the audit trail that is written at `now`: ids stand in the order of time. */
  newAuditId(now: Instant): string;
  /** What it has written so far. */
  readonly trace: Trace;
}

export interface TxOptions {
  readonly ids?: number;
  readonly snapshot?: boolean;
  /** What any reader would store first, such as determinations that only time changed: no part of what is asked for. */
  readonly apart?: boolean;
}

export interface Store {
  readonly kind: DatabaseKind;
  /**
   * Runs one transaction. It may be run again when the database asks for it, so `work` must not act on anything else.
   * `ids`: how many new entries it will need at most (default 16, none with a snapshot). `snapshot`: all of its reads see one state, for what
   * reads much and locks nothing; a transaction that locks what it changes must see what came before the lock instead.
   */
  tx<T>(work: (tx: Tx) => Promise<T>, options?: TxOptions): Promise<T>;
  /** Reads from one snapshot: nothing that is written meanwhile is seen. */
  read<T>(work: (read: Read) => Promise<T>): Promise<T>;
  /** Writes down who saw which records; stored when it resolves. Views that come together are stored together. */
  noteView(by: Recording, view: Audit): Promise<void>;
  /**
   * Takes work of that number for this process, until `release` or the end of the process, however it ends; null when
   * somebody has it.
   */
  claim(id: number): Promise<Claim | null>;
  close(): Promise<void>;
}

/** Work that nobody else does meanwhile. */
export interface Claim {
  release(): Promise<void>;
}
