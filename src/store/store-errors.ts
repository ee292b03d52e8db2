import { Problem, type ProblemCode } from "../../shared/problems.ts";

/**
 * The codes under which a database gives up one transaction for another: write conflict, deadlock, busy. On PostgreSQL
 * also a unique value that somebody took between our check and our insert: run again, the check sees it and refuses it
 * by name. (Codes: Prisma's error reference; PostgreSQL manual, appendix A.)
 */
const retryable = /^(P2034|P1008|SQLITE_BUSY.*|40001|40P01|23505)$/;

/** Whether the same transaction may succeed when it is run again. */
export function isRetryable(error: unknown): boolean {
  return !(error instanceof Problem) && codesOf(error).some((code) => retryable.test(code));
}

interface Cause {
  readonly codes: RegExp;
  /** For drivers that give a message and no code. */
  readonly text?: RegExp;
  readonly problem: ProblemCode;
  readonly detail: string;
}

const causes: readonly Cause[] = [
  { codes: /^(SQLITE_FULL|53100|ENOSPC)$/, problem: "disk-full", detail: "The disk that holds the database is full." },
  {
    codes: /^(SQLITE_READONLY.*|SQLITE_CANTOPEN.*|SQLITE_PERM|EACCES|EROFS)$/,
    text: /directory does not exist/,
    problem: "database-not-writable",
    detail: "The database file or its folder cannot be written.",
  },
  {
    codes: /^(42501|25006)$/,
    problem: "database-not-writable",
    detail: "The database server does not let this user write in the database.",
  },
  {
    codes: /^(SQLITE_NOTADB|SQLITE_CORRUPT.*)$/,
    problem: "database-unreadable",
    detail: "The database file is damaged, or is no database at all.",
  },
  {
    codes: /^SQLITE_BUSY.*$/,
    problem: "database-in-use",
    detail: "Another program has the database file open and does not let go of it.",
  },
  {
    codes: /^(28P01|28000|P1000|P1010)$/,
    problem: "database-unreachable",
    detail: "The database server refused the user or password.",
  },
  {
    codes: /^(3D000|P1003)$/,
    problem: "database-unreachable",
    detail: "The database server has no database of that name.",
  },
  {
    codes: /^(DEPTH_ZERO_SELF_SIGNED_CERT|SELF_SIGNED_CERT_IN_CHAIN|UNABLE_TO_.*|CERT_.*|ERR_TLS_.*|P1011)$/,
    text: /does not support SSL/,
    problem: "database-unreachable",
    detail: "No encrypted connection to the database server could be made.",
  },
  {
    codes:
      /^(P1001|P1002|P1017|08...|57P0[123]|53300|E(CONN(REFUSED|RESET)|NOTFOUND|AI_AGAIN|TIMEDOUT|PIPE|HOSTUNREACH|NETUNREACH))$/,
    text: /Connection terminated|timeout expired|timeout exceeded when trying to connect|Can't reach database server/,
    problem: "database-unreachable",
    detail: "The database server does not answer at the address in the settings, or broke off.",
  },
];

/**
 * What a person is told when the database fails for a reason outside the program; other errors pass unchanged. The
 * sentences are fixed, since what a driver says may hold the address, the user or a value.
 */
export function storeProblem(error: unknown): unknown {
  if (error instanceof Problem) return error;
  const codes = codesOf(error);
  const text = error instanceof Error ? error.message : "";
  const cause = causes.find((c) => codes.some((code) => c.codes.test(code)) || c.text?.test(text));
  return cause ? new Problem({ code: cause.problem, pointer: "", detail: cause.detail }) : error;
}

/** The codes of an error, of what caused it, and of the driver's error that Prisma carries along. */
function codesOf(error: unknown, depth = 0): string[] {
  if (typeof error !== "object" || error === null || depth > 5) return [];
  return Object.entries({ cause: undefined, ...error, ...causeOf(error) }).flatMap(([name, value]) => {
    if ((name === "code" || name === "originalCode") && typeof value === "string") return [value];
    return name === "cause" || name === "meta" || name === "driverAdapterError" ? codesOf(value, depth + 1) : [];
  });
}

/** An error's own cause does not show among its entries. */
function causeOf(error: object): { cause?: unknown } {
  return error instanceof Error && error.cause !== undefined ? { cause: error.cause } : {};
}
