import { describe, expect, it } from "vitest";
import { totalsLine, totalsOf } from "../../scripts/vitest-run.mjs";

const readable = { status: "passed", assertionResults: [{ status: "passed" }] };
const unreadable = { status: "failed", assertionResults: [] };

describe("the totals of a test run", () => {
  it("are what vitest reports", () => {
    const failing = { status: "failed", assertionResults: [{ status: "failed" }] };
    const report = {
      numPassedTests: 12,
      numFailedTests: 3,
      numPendingTests: 1,
      numTodoTests: 1,
      testResults: [readable, failing],
    };
    expect(totalsOf(report, 1)).toEqual({ passed: 12, failed: 3, skipped: 2 });
  });

  it("count a file that could not be read as one failed test", () => {
    const report = {
      numPassedTests: 12,
      numFailedTests: 0,
      numPendingTests: 0,
      numTodoTests: 0,
      testResults: [readable, unreadable],
    };
    expect(totalsOf(report, 1)).toEqual({ passed: 12, failed: 1, skipped: 0 });
  });

  it("count an error outside any test as one failed test", () => {
    const report = {
      numPassedTests: 12,
      numFailedTests: 0,
      numPendingTests: 0,
      numTodoTests: 0,
      testResults: [readable],
    };
    expect(totalsOf(report, 1)).toEqual({ passed: 12, failed: 1, skipped: 0 });
    expect(totalsOf(report, 0)).toEqual({ passed: 12, failed: 0, skipped: 0 });
  });

  it("fail a run in which no test ran, and a run without a report", () => {
    const report = { numPassedTests: 0, numFailedTests: 0, numPendingTests: 4, numTodoTests: 0, testResults: [] };
    expect(totalsOf(report, 0)).toEqual({ passed: 0, failed: 1, skipped: 4 });
    expect(totalsOf(null, 0)).toEqual({ passed: 0, failed: 1, skipped: 0 });
  });

  it("name skipped tests only when there are any", () => {
    expect(totalsLine({ passed: 12, failed: 0, skipped: 0 })).toBe("12 passed, 0 failed");
    expect(totalsLine({ passed: 12, failed: 1, skipped: 2 })).toBe("12 passed, 1 failed, 2 skipped");
  });
});
