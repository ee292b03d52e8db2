import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";

/** An empty folder that is deleted after the test that asks for it. */
export function tempFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "dwell-ledger-test-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
