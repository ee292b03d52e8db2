import ts from "typescript";
import { type Finding, lineOf, nodesOf, type RuleResult, sourcesIn, type Tree, together } from "./tree.ts";

/**
 * Only src/config.ts reads the environment (src/main.ts may hand it over, whole, to `readConfig`),
 * and nothing in src writes to the console. Counts files.
 */
export function environmentAndConsole(tree: Tree): RuleResult {
  return together(
    sourcesIn(tree, /^(src|shared)\/.*\.tsx?$/).map((source) => ({
      checked: 1,
      findings: nodesOf(source).flatMap((node) => judge(source.fileName, node)),
    })),
  );
}

function judge(path: string, node: ts.Node): Finding[] {
  const finding = (message: string): Finding[] => [{ path, line: lineOf(node), message }];
  if (readsEnvironment(node)) {
    if (path === "src/config.ts" || (path === "src/main.ts" && isHandedToConfig(node))) return [];
    return finding("reads the environment; add the setting to src/config.ts and pass it in");
  }
  if (ts.isPropertyAccessExpression(node) && node.expression.getText() === "console") {
    return finding("writes to the console; use the logger, or the output passed to a command");
  }
  return [];
}

function readsEnvironment(node: ts.Node): boolean {
  if (ts.isPropertyAccessExpression(node)) return /^(globalThis\.)?process\.env$/.test(node.getText());
  if (ts.isImportSpecifier(node)) return /^env\b/.test(node.getText());
  const isProcess = ts.isVariableDeclaration(node) && node.initializer?.getText() === "process";
  return isProcess && /\benv\b/.test(node.name.getText());
}

function isHandedToConfig(node: ts.Node): boolean {
  return ts.isCallExpression(node.parent) && node.parent.expression.getText() === "readConfig";
}
