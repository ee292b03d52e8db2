import ts from "typescript";
import { type Finding, nodesOf, type RuleResult, sourcesIn, type Tree } from "./tree.ts";

/**
 * Every src/a/b.ts that exports a function has tests/a/b.test.ts, or an entry in `elsewhere` that names
 * an existing test; an entry for a folder of pages, `src/web/pages/round/`, stands for the files that lie in it. Counts
 * files with exported functions.
 */
export function mirroredTests(tree: Tree, elsewhere: Readonly<Record<string, string>>): RuleResult {
  const sources = sourcesIn(tree, /^src\/.*\.tsx?$/).filter(exportsFunction);
  const untested = sources.flatMap(({ fileName }): Finding[] => {
    const own = ownTest(tree, fileName);
    const other = elsewhere[fileName] ?? elsewhere[folderOf(fileName)];
    if (own || (other !== undefined && tree.has(other))) return [];
    const wanted = fileName.replace(/^src\//, "tests/").replace(/\.tsx?$/, ".test.ts");
    const cure =
      other === undefined
        ? `write ${wanted}`
        : `its entry in covered-elsewhere.ts names ${other}, which does not exist`;
    return [{ path: fileName, line: 0, message: `has no test; ${cure}` }];
  });
  const stale = Object.keys(elsewhere).flatMap((path): Finding[] => {
    const isNeeded = sources.some(
      ({ fileName }) => (fileName === path || folderOf(fileName) === path) && !ownTest(tree, fileName),
    );
    return isNeeded ? [] : [{ path, line: 0, message: "needs no entry in covered-elsewhere.ts; take it out" }];
  });
  return { checked: sources.length, findings: [...untested, ...stale] };
}

function folderOf(path: string): string {
  return path.slice(0, path.lastIndexOf("/") + 1);
}

function ownTest(tree: Tree, path: string): string | undefined {
  const stem = path.replace(/^src\//, "tests/").replace(/\.tsx?$/, "");
  return [`${stem}.test.ts`, `${stem}.test.tsx`].find((test) => tree.has(test));
}

function exportsFunction(source: ts.SourceFile): boolean {
  return nodesOf(source).some((node) => {
    if (!ts.canHaveModifiers(node)) return false;
    const isExported = ts.getModifiers(node)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);
    if (!isExported) return false;
    if (ts.isFunctionDeclaration(node) || ts.isClassDeclaration(node)) return true;
    return ts.isVariableStatement(node) && node.declarationList.declarations.some(holdsFunction);
  });
}

function holdsFunction({ initializer }: ts.VariableDeclaration): boolean {
  return initializer !== undefined && (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer));
}
