import { chmodSync, mkdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { isOpenToOthers } from "../../scripts/postgres-programs.mjs";
import { tempFolder } from "./temp-folder.ts";

it("a folder is open to the server's account only when every folder above it is", () => {
  const above = tempFolder();
  const inner = join(above, "inner");
  mkdirSync(inner, { mode: 0o755 });
  expect(isOpenToOthers(inner)).toBe(false);
  chmodSync(above, 0o755);
  expect(isOpenToOthers(inner)).toBe(isOpenToOthers(tmpdir()));
});
