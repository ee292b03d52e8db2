import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, it } from "vitest";
import { codeRules } from "./house/planted-code.ts";
import { textRules } from "./house/planted-texts.ts";
import { plant, readTree } from "./house/tree.ts";

const tree = readTree(dirname(dirname(fileURLToPath(import.meta.url))));
const looked: string[] = [];

describe.each([...codeRules, ...textRules].map((rule) => [rule.title, rule] as const))("%s", (title, planted) => {
  const { rule, plantedRule = rule, kept, broken } = planted;

  it("holds for the project", () => {
    const { checked, findings } = rule(tree);
    looked.push(`${String(checked).padStart(7)}  ${title}`);
    const list = findings.map(({ path, line, message }) => `${path}${line > 0 ? `:${line}` : ""} ${message}`);
    expect(list).toEqual([]);
    expect(checked, "the rule looked at nothing").toBeGreaterThan(0);
  });

  it("passes a small tree that keeps it", () => {
    const { checked, findings } = plantedRule(plant(kept));
    expect(findings).toEqual([]);
    expect(checked).toBeGreaterThan(0);
  });

  it.each(broken.map(({ says, files }) => [says, files] as const))("finds what is planted: %s", (says, files) => {
    const { findings } = plantedRule(plant(files));
    expect(findings.map(({ message }) => message)).toEqual([expect.stringContaining(says)]);
  });
});

afterAll(() => {
  process.stdout.write(`looked at\n${looked.join("\n")}\n`);
});
