import { describe, expect, it } from "vitest";
import { Problem } from "../../shared/problems.ts";
import { isRetryable, storeProblem } from "../../src/store/store-errors.ts";

/** An error as PostgreSQL's driver throws it. */
function coded(code: string, message = "s3cret"): Error {
  return Object.assign(new Error(message), { code });
}

/** An error as Prisma throws it: its own code, and the driver's error carried along. */
function fromPrisma(code: string, originalCode: string): Error {
  const cause = { originalCode, originalMessage: "s3cret", kind: "postgres" };
  return Object.assign(new Error("s3cret"), { code, meta: { driverAdapterError: { cause } } });
}

describe("an error of a database", () => {
  // Codes: PostgreSQL manual, appendix A; SQLite manual, page Result and Error Codes; Prisma's error reference; Node's
  // list of system errors.
  it.each([
    ["disk-full", coded("53100")],
    ["disk-full", coded("SQLITE_FULL")],
    ["disk-full", fromPrisma("P2010", "53100")],
    ["database-not-writable", coded("SQLITE_CANTOPEN")],
    ["database-not-writable", coded("SQLITE_READONLY_DBMOVED")],
    ["database-not-writable", coded("42501")],
    ["database-not-writable", fromPrisma("P2010", "25006")],
    ["database-not-writable", new Error("Cannot open database because the directory does not exist")],
    ["database-unreadable", coded("SQLITE_NOTADB")],
    ["database-unreadable", coded("SQLITE_CORRUPT")],
    ["database-in-use", coded("SQLITE_BUSY")],
    ["database-unreachable", coded("28P01")],
    ["database-unreachable", fromPrisma("P1003", "3D000")],
    ["database-unreachable", coded("ECONNREFUSED")],
    ["database-unreachable", coded("57P01")],
    ["database-unreachable", new Error("Connection terminated unexpectedly")],
    ["database-unreachable", new Error("The server does not support SSL connections")],
    ["database-unreachable", new Error("outer", { cause: coded("ECONNRESET") })],
  ])("is told as %s, in one sentence that repeats nothing of it", (code, error) => {
    const problem = storeProblem(error);
    expect(problem).toBeInstanceOf(Problem);
    expect(problem).toMatchObject({ code, message: expect.stringMatching(/^The |^Another |^No /) });
    expect(JSON.stringify(problem) + String(problem)).not.toContain("s3cret");
  });

  it("passes unchanged when it is a bug, whatever its words are", () => {
    for (const error of [coded("23502"), new Error("SQLITE_FULL was never the code"), "disk full", null])
      expect(storeProblem(error)).toBe(error);
  });

  it("is not told anew when it is a refusal already", () => {
    const problem = new Problem({ code: "not-found", pointer: "", detail: "No." });
    expect(storeProblem(problem)).toBe(problem);
    expect(isRetryable(problem)).toBe(false);
  });

  it("may pass when run again if the database gave way to another transaction", () => {
    for (const code of ["P2034", "P1008", "40001", "40P01", "SQLITE_BUSY_SNAPSHOT", "23505"])
      expect(isRetryable(coded(code))).toBe(true);
    expect(isRetryable(fromPrisma("P2010", "40P01"))).toBe(true);
    for (const code of ["23502", "23503", "SQLITE_CONSTRAINT_UNIQUE", "53100"])
      expect(isRetryable(coded(code))).toBe(false);
    expect(isRetryable(new Error("deadlock detected"))).toBe(false);
  });

  it("that causes itself is looked into only so far", () => {
    const error = coded("E1");
    error.cause = error;
    expect(storeProblem(error)).toBe(error);
  });
});
