import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { auditUsage } from "../../src/commands/audit.ts";
import { determinationsUsage } from "../../src/commands/determinations.ts";
import { importUsage } from "../../src/commands/import.ts";
import { ledgerUsage } from "../../src/commands/ledger.ts";
import { migrateUsage } from "../../src/commands/migrate.ts";
import { reportUsage } from "../../src/commands/report.ts";
import { serveUsage } from "../../src/commands/serve.ts";

const read = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
const operating = read("docs/operating.md");

describe("docs/operating.md", () => {
  it("has the usage of every command, as the command prints it", () => {
    const usages = [serveUsage, reportUsage, importUsage, ledgerUsage, determinationsUsage, auditUsage, migrateUsage];
    const shown = /^## Commands\n[\s\S]*?^```\n([\s\S]*?)^```$/m.exec(operating)?.[1];
    expect(shown).toBe(`${usages.join("\n")}\n`);
  });

  it("has every setting that the program reads, and no other", () => {
    const settings = [...read("src/config.ts").matchAll(/^ {2}([A-Z_]{6,}):/gm)].map(([, name]) => name);
    const table = /^## Settings\n([\s\S]*?)^## /m.exec(operating)?.[1] ?? "";
    const documented = [...table.matchAll(/`((?:DWELL|CHROMIUM)_[A-Z_]+)`/g)].map(([, name]) => name);
    expect(settings.length).toBeGreaterThan(5);
    expect(documented.toSorted()).toEqual(settings.toSorted());
  });
});
