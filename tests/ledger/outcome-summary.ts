import { expect } from "vitest";
import { kinds } from "./edit-kinds.ts";
import type { Count } from "./oracle.ts";
import type { Outcome } from "./random-hospital.ts";

/** What all runs on one database came to. */
export interface Summary {
  readonly runs: number;
  readonly outcomes: readonly Outcome[];
  readonly counts: readonly Count[];
}

/** One line for the person at the terminal. */
export function summaryLine({ runs, outcomes, counts }: Summary): string {
  const done = outcomes.filter((o) => o.result === "done").length;
  const atOnce = outcomes.filter((o) => o.concurrent).length;
  const closed = counts.flatMap((count) => count.closed);
  const sum = (of: (count: Count) => number) => counts.reduce((all, count) => all + of(count), 0);
  return [
    `${runs} runs: ${outcomes.length} edits, ${atOnce} of them at once, ${done} done, ${outcomes.length - done} refused`,
    `${closed.length} rows in the ledger, ${closed.filter((row) => row.catheter).length} with a catheter`,
    `${sum((count) => count.open.length)} open days, ${sum((count) => count.held)} with the bed held`,
  ].join("; ");
}

/** Fails when the edits were too tame to prove anything: a fault of the generator, not of the ledger. */
export function expectEnough(summary: Summary): void {
  const { runs, outcomes, counts } = summary;
  const line = summaryLine(summary);
  expect(outcomes.length / runs, line).toBeGreaterThanOrEqual(40);
  expect(outcomes.filter((o) => o.concurrent).length / outcomes.length, line).toBeGreaterThanOrEqual(0.2);
  expect(outcomes.filter((o) => o.result === "done").length / outcomes.length, line).toBeGreaterThan(1 / 3);
  expect(counts.flatMap((count) => count.closed).length, line).toBeGreaterThan(0);
  // Rare kinds need not succeed in a few runs.
  if (runs < 20) return;
  for (const { name } of kinds) expect(tally(outcomes, name), `${name}; ${line}`).toHaveProperty("done");
  for (const part of [caught(counts, "open"), caught(counts, "held"), caught(counts, "catheter")])
    expect(part, line).toBeGreaterThan(runs / 4);
  if (runs < 100) return;
  // What notes and the times of catheters refuse each other for has to come about, or it was not tried.
  const codes = new Set(outcomes.map(({ result }) => result));
  expect([...codes], line).toEqual(expect.arrayContaining(["not-in-place", "seen-after-removal", "stale-version"]));
}

/** How often edits of a kind ended in each way. */
function tally(outcomes: readonly Outcome[], kind: string): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const { kind: own, result } of outcomes) if (own === kind) counts[result] = (counts[result] ?? 0) + 1;
  return counts;
}

/** In how many runs there was any such day. */
function caught(counts: readonly Count[], part: "open" | "held" | "catheter"): number {
  return counts.filter(({ closed, open, held }) => {
    if (part === "open") return open.length > 0;
    return part === "held" ? held > 0 : closed.some((row) => row.catheter);
  }).length;
}
