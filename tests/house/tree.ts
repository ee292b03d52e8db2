import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";

/** The project's files as the rules see them: path from the project's folder, with `/`, to text. */
export type Tree = ReadonlyMap<string, string>;

/** One breach of a rule; the message names the cure. */
export interface Finding {
  path: string;
  /** Line in the file, from 1; 0 when the whole file is meant. */
  line: number;
  message: string;
}

/** What a rule found, and how many things (files, imports, functions …) it looked at. */
export interface RuleResult {
  checked: number;
  findings: Finding[];
}

export type Rule = (tree: Tree) => RuleResult;

/** Folders that hold nothing a person wrote. */
const leftOut = new Set(["node_modules", "dist", "data", "coverage", ".git", ".setup-lock", "src/store/generated"]);
const textFile =
  /(\.(ts|tsx|mjs|json|jsonc|md|yml|yaml|css|html|svg|sql|prisma|toml|sh|csv|env)|file|\/run|ignore|\.example)$/;

/** Reads the project's files; of a file that is no text, only that it is there. */
export function readTree(folder: string): Tree {
  const tree = new Map<string, string>();
  const visit = (path: string): void => {
    for (const entry of readdirSync(join(folder, path), { withFileTypes: true })) {
      const inner = path === "" ? entry.name : `${path}/${entry.name}`;
      if (leftOut.has(entry.name) || leftOut.has(inner)) continue;
      if (entry.isDirectory()) visit(inner);
      else tree.set(inner, textFile.test(inner) ? readFileSync(join(folder, inner), "utf8") : "");
    }
  };
  visit("");
  return tree;
}

/** A tree of a few files, for testing a rule. */
export function plant(files: Record<string, string>): Tree {
  return new Map(Object.entries(files));
}

/** The files that the pattern matches, parsed. */
export function sourcesIn(tree: Tree, pattern: RegExp): ts.SourceFile[] {
  return [...tree].filter(([path]) => pattern.test(path)).map(([path, text]) => parse(path, text));
}

const parsed = new Map<string, ts.SourceFile>();

function parse(path: string, text: string): ts.SourceFile {
  const known = parsed.get(path);
  if (known?.text === text) return known;
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  parsed.set(path, source);
  return source;
}

/** All nodes of a file, parents first. */
export function nodesOf(node: ts.Node): ts.Node[] {
  const inner: ts.Node[] = [];
  ts.forEachChild(node, (child) => {
    inner.push(child);
  });
  return [node, ...inner.flatMap(nodesOf)];
}

/** Line of the node's first character, from 1. */
export function lineOf(node: ts.Node): number {
  return node.getSourceFile().getLineAndCharacterOfPosition(node.getStart()).line + 1;
}

/** Line of the character at this place in a text, from 1. */
export function lineAt(text: string, index: number): number {
  return text.slice(0, index).split("\n").length;
}

/** Puts together what a rule found in each file. */
export function together(parts: readonly RuleResult[]): RuleResult {
  return {
    checked: parts.reduce((sum, part) => sum + part.checked, 0),
    findings: parts.flatMap((part) => part.findings),
  };
}
