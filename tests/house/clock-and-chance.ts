import ts from "typescript";
import { type Finding, lineOf, nodesOf, type RuleResult, sourcesIn, type Tree, together } from "./tree.ts";

/** Where a clock or chance is allowed all the same, and why. A folder ends with `/`. */
const allowedClocks: Readonly<Record<string, string>> = {
  "src/main.ts": "the only place that reads the clock, and hands it on",
  "src/web/": "runs in the browser, whose clock shows a person how old the page is",
};

const clocks = new Set(["Date.now", "performance.now", "Math.random", "crypto.randomUUID", "process.hrtime"]);

/** No clock and no chance in src: `now` is passed in, so that everything can be told again. Counts files. */
export function clockAndChance(tree: Tree): RuleResult {
  const allowed = Object.keys(allowedClocks);
  return together(
    sourcesIn(tree, /^(src|shared)\/.*\.tsx?$/)
      .filter(
        ({ fileName }) => !allowed.some((path) => (path.endsWith("/") ? fileName.startsWith(path) : fileName === path)),
      )
      .map((source) => ({ checked: 1, findings: nodesOf(source).flatMap((node) => judge(source.fileName, node)) })),
  );
}

function judge(path: string, node: ts.Node): Finding[] {
  const used = clockIn(node);
  if (used === undefined) return [];
  const message = `uses ${used}; take now (or the chance) as an argument, from src/main.ts down`;
  return [{ path, line: lineOf(node), message }];
}

function clockIn(node: ts.Node): string | undefined {
  if (ts.isPropertyAccessExpression(node)) {
    const name = node.getText().replace(/^globalThis\./, "");
    return clocks.has(name) || name.startsWith("Temporal.Now") ? name : undefined;
  }
  const isDate = (ts.isNewExpression(node) || ts.isCallExpression(node)) && node.expression.getText() === "Date";
  if (!isDate) return undefined;
  return ts.isCallExpression(node) || (node.arguments ?? []).length === 0 ? "the current Date" : undefined;
}
