import ts from "typescript";
import { type Finding, lineOf, nodesOf, type RuleResult, sourcesIn, type Tree, together } from "./tree.ts";

const longestFileLines = 400;
const longestFunctionLines = 60;
/** Lists that grow by a line or an entry and hold no thought: they are easier to read whole. */
const longLists = new Set(["shared/problems.ts", "tests/house/covered-elsewhere.ts"]);
const written = /^(src|shared|tests|scripts|[^/]+$).*\.(ts|tsx|mjs)$/;
/** Calls of the test runner: what stands in them is a list of cases rather than one thought. */
const testCalls = new Set([
  "describe",
  "it",
  "test",
  "beforeAll",
  "beforeEach",
  "afterAll",
  "afterEach",
  "onEachDatabase",
]);

/** No file over 400 lines. Counts files. */
export function fileSizes(tree: Tree): RuleResult {
  const files = [...tree].filter(([path]) => written.test(path));
  const findings = files.flatMap(([path, text]) => {
    const lines = text.trimEnd().split("\n").length;
    if (lines <= longestFileLines || longLists.has(path)) return [];
    return [{ path, line: 0, message: `has ${lines} lines, over ${longestFileLines}; split it by what is in it` }];
  });
  return { checked: files.length, findings };
}

/** No function over 60 lines; in tests, the callbacks of the test runner are exempt. Counts functions. */
export function functionSizes(tree: Tree): RuleResult {
  return together(
    sourcesIn(tree, written).map((source) => {
      const functions = nodesOf(source).filter((node) => ts.isFunctionLike(node) && "body" in node && node.body);
      return { checked: functions.length, findings: functions.flatMap((node) => judge(source.fileName, node)) };
    }),
  );
}

function judge(path: string, node: ts.Node): Finding[] {
  const lines = node.getText().split("\n").length;
  if (lines <= longestFunctionLines || (path.startsWith("tests/") && isTestCallback(node))) return [];
  const message = `has a function of ${lines} lines, over ${longestFunctionLines}; give its parts names of their own`;
  return [{ path, line: lineOf(node), message }];
}

/** True for `fn` in `it("…", fn)`, `describe.each(table)("…", fn)` and the like. */
function isTestCallback(node: ts.Node): boolean {
  let callee: ts.Node | undefined = ts.isCallExpression(node.parent) ? node.parent.expression : undefined;
  while (callee && (ts.isCallExpression(callee) || ts.isPropertyAccessExpression(callee))) callee = callee.expression;
  return callee !== undefined && testCalls.has(callee.getText());
}
