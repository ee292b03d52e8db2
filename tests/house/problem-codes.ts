import ts from "typescript";
import { type Finding, lineOf, nodesOf, type RuleResult, sourcesIn, type Tree } from "./tree.ts";

/** Every code in shared/problems.ts is given somewhere in src. Counts codes. */
export function problemCodes(tree: Tree): RuleResult {
  const codes = sourcesIn(tree, /^shared\/problems\.ts$/).flatMap(codesIn);
  const texts = new Set(
    sourcesIn(tree, /^src\/.*\.tsx?$/)
      .flatMap(nodesOf)
      .flatMap((node) => (ts.isStringLiteralLike(node) ? [node.text] : [])),
  );
  const findings = codes.flatMap(({ code, line }): Finding[] => {
    if (texts.has(code)) return [];
    return [
      { path: "shared/problems.ts", line, message: `has ${code}, which nothing in src answers with; take it out` },
    ];
  });
  return { checked: codes.length, findings };
}

/** The names in `export const problems = { … }`. */
function codesIn(source: ts.SourceFile): { code: string; line: number }[] {
  return nodesOf(source).flatMap((node) => {
    if (!ts.isVariableDeclaration(node) || node.name.getText() !== "problems" || !node.initializer) return [];
    const table = nodesOf(node.initializer).find(ts.isObjectLiteralExpression);
    return (table?.properties ?? []).flatMap(({ name }) =>
      name && (ts.isStringLiteral(name) || ts.isIdentifier(name)) ? [{ code: name.text, line: lineOf(name) }] : [],
    );
  });
}
