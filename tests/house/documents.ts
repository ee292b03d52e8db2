import { type Finding, lineAt, type RuleResult, type Tree, together } from "./tree.ts";

const first = ["README.md", "DEVELOPERS.md"];

/** Every document for people, first README.md and DEVELOPERS.md. */
export function documentsIn(tree: Tree): string[] {
  return [...first, ...[...tree.keys()].filter((path) => path.endsWith(".md") && !first.includes(path)).sort()];
}

const topFolders = ["src", "shared", "tests", "scripts", "prisma", ".ci", "docs"];
const rooms = ["domain", "store", "usecases", "http", "csv", "commands", "web", "hl7", "fhir"];
const ownFile = /^[\w.-]+\.(ts|tsx|mjs|md|json|jsonc|yml|prisma)$/;
/** A part that the reader fills in: `src/<room>/<file>.ts`, `tests/**`, `…`. */
const placeholder = /[<>*…{}]/;

/** README.md and DEVELOPERS.md are there. Counts documents. */
export function documentsExist(tree: Tree): RuleResult {
  const missing = first.filter((document) => !tree.get(document)?.trim());
  return {
    checked: first.length - missing.length,
    findings: missing.map((path) => ({ path, line: 0, message: "is missing or empty; write it" })),
  };
}

/** Every `npm run NAME` in the documents is a script of package.json. Counts commands. */
export function documentedCommands(tree: Tree): RuleResult {
  const { scripts } = JSON.parse(tree.get("package.json") ?? '{"scripts":{}}') as { scripts: Record<string, string> };
  return inEach(tree, /\bnpm (?:run(?:-script)?(?: -\S+)* ([\w:-]+)|(start|test)\b)/g, ([, named, short]) => {
    const name = named ?? short ?? "";
    return name in scripts ? [] : [`names the command npm run ${name}; add it to package.json, or correct the text`];
  });
}

/** Every path in the documents exists: in `code`, in links and in code blocks. Counts paths. */
export function documentedPaths(tree: Tree): RuleResult {
  const known = knownPaths(tree);
  const parts = documentsIn(tree).map((document) => {
    const text = tree.get(document) ?? "";
    const named = pathsIn(text);
    const findings = named.flatMap(({ path, index }): Finding[] => {
      if (known.has(path)) return [];
      const message = `names ${path}, which does not exist; correct it, or write the part to be filled in as <part>`;
      return [{ path: document, line: lineAt(text, index), message }];
    });
    return { checked: named.length, findings };
  });
  return together(parts);
}

function inEach(tree: Tree, pattern: RegExp, judge: (match: RegExpExecArray) => string[]): RuleResult {
  return together(
    documentsIn(tree).map((document) => {
      const text = tree.get(document) ?? "";
      const matches = [...text.matchAll(pattern)];
      const findings = matches.flatMap((match) =>
        judge(match).map((message) => ({ path: document, line: lineAt(text, match.index), message })),
      );
      return { checked: matches.length, findings };
    }),
  );
}

/** Files and folders from the top, the same from within src, and every file by its bare name. */
function knownPaths(tree: Tree): Set<string> {
  const known = new Set<string>();
  for (const path of tree.keys()) {
    const parts = path.split("/");
    known.add(parts.at(-1) ?? path);
    for (let length = 1; length <= parts.length; length++) {
      const part = parts.slice(0, length).join("/");
      known.add(part).add(part.replace(/^src\//, ""));
    }
  }
  return known;
}

function pathsIn(text: string): { path: string; index: number }[] {
  const spans = [...text.matchAll(/`([^`\n]+)`|\]\(([^)\s]+)\)/g)];
  const blocks = [...text.matchAll(/^```[^\n]*\n([\s\S]*?)^```/gm)];
  const words = [...spans, ...blocks].flatMap((match) => {
    const inner = match[1] ?? match[2] ?? "";
    const start = match.index + match[0].indexOf(inner);
    return [...inner.matchAll(/[^\s,;:()"'`|=]+/g)].map((word) => ({ path: word[0], index: start + word.index }));
  });
  return words
    .map(({ path, index }) => ({
      path: path
        .replace(/^\.\//, "")
        .replace(/[#?].*$/, "")
        .replace(/[/.]$/, ""),
      index,
    }))
    .filter(({ path }) => looksLikeOwnPath(path));
}

function looksLikeOwnPath(path: string): boolean {
  if (placeholder.test(path)) return false;
  const [first = ""] = path.split("/");
  return path.includes("/") ? [...topFolders, ...rooms].includes(first) : ownFile.test(path);
}
