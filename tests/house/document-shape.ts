import { posix } from "node:path";
import { documentsIn } from "./documents.ts";
import { type Room, rooms } from "./rooms.ts";
import { type Finding, lineAt, type RuleResult, type Tree, together } from "./tree.ts";

/** How many lines a document may have, by its path; the first match counts. */
const longest: readonly (readonly [RegExp, number])[] = [
  [/^README\.md$/, 200],
  [/^DEVELOPERS\.md$/, 150],
  [/^docs\/decisions\/(?!README\.md$)/, 40],
  [/^(shared|prisma|scripts|tests|src\/.*)\/README\.md$/, 15],
];

/** README.md, DEVELOPERS.md, pages of decisions and the README.md of a module keep their length. Counts documents. */
export function documentLengths(tree: Tree): RuleResult {
  const limited = documentsIn(tree).flatMap((path) => {
    const most = path === dataSources ? undefined : longest.find(([pattern]) => pattern.test(path))?.[1];
    return most === undefined ? [] : [{ path, most, lines: (tree.get(path) ?? "").trimEnd().split("\n").length }];
  });
  const findings = limited.flatMap(({ path, most, lines }): Finding[] =>
    lines <= most ? [] : [{ path, line: most, message: `has ${lines} lines; shorten it to ${most}` }],
  );
  return { checked: limited.length, findings };
}

/** The sources of reference values: a list, and no module. */
const dataSources = "tests/reference/data/README.md";
const besideRooms = ["prisma", "scripts", "tests"];

/** The modules of which each folder is one of its own. */
const parted = /^(src\/(?:domain|usecases))\/[^/]+$/;

/** Each module that rooms.ts names, each folder of the domain and of the use cases, and tests, scripts and prisma. */
function modulesIn(tree: Tree): string[] {
  const folders = new Set([...tree.keys()].map(posix.dirname));
  const parts = [...folders].filter((folder) => parted.test(folder));
  const named = [...Object.keys(rooms), ...besideRooms].filter((name) => name !== "src/domain");
  return [...named.filter((name) => [...tree.keys()].some((path) => path.startsWith(`${name}/`))), ...parts];
}

/** Each module has a README.md that names exactly what rooms.ts lets it import. Counts modules. */
export function moduleReadmes(tree: Tree): RuleResult {
  const modules = modulesIn(tree);
  const findings = modules.flatMap((module): Finding[] => {
    const path = `${module}/README.md`;
    const text = tree.get(path);
    if (text === undefined)
      return [{ path, line: 0, message: "is missing; say what the module is and where to start" }];
    const room = rooms[parted.exec(module)?.[1] ?? module];
    if (room === undefined) return [];
    const wanted = importable(room).sort().join(", ");
    const said = /^May import:([\s\S]*?)(?:; no package|\.)(?: Start|\n)/m.exec(text)?.[1] ?? "";
    const named = [...said.matchAll(/`([^`]+)`/g)].map(([, name]) => name ?? "");
    if (named.sort().join(", ") === wanted) return [];
    return [{ path, line: 0, message: `says that it may import ${named.join(", ")}; rooms.ts says ${wanted}` }];
  });
  return { checked: modules.length, findings };
}

function importable({ rooms: below, packages, typesOf = [] }: Room): string[] {
  return [...below, ...packages, ...typesOf];
}

/** Every link between documents leads to a file, and to a heading where it names one. Counts links. */
export function documentLinks(tree: Tree): RuleResult {
  return together(
    documentsIn(tree).map((document) => {
      const text = tree.get(document) ?? "";
      const links = [...text.matchAll(/\]\((?!https?:)([^)\s]+)\)/g)];
      const findings = links.flatMap((match): Finding[] => {
        const [file = "", heading] = (match[1] ?? "").split("#");
        const target = file === "" ? document : posix.normalize(posix.join(posix.dirname(document), file));
        const isThere = tree.has(target) && (heading === undefined || headingsOf(tree, target).includes(heading));
        const message = `links to ${match[1]}, which does not exist; correct the link`;
        return isThere ? [] : [{ path: document, line: lineAt(text, match.index), message }];
      });
      return { checked: links.length, findings };
    }),
  );
}

/** Headings as a link names them: lower case, hyphens for spaces, no punctuation (as repositories show Markdown). */
function headingsOf(tree: Tree, path: string): string[] {
  return [...(tree.get(path) ?? "").matchAll(/^#+ (.+)$/gm)].map(([, heading = ""]) =>
    heading
      .toLowerCase()
      .replace(/[^\p{L}\p{N} _-]/gu, "")
      .replace(/ /g, "-"),
  );
}

const index = "docs/decisions/README.md";

/** Each decision has a status, its three parts and its line in the index. Counts decisions. */
export function decisionPages(tree: Tree): RuleResult {
  const pages = documentsIn(tree).filter((path) => path.startsWith("docs/decisions/") && path !== index);
  const findings = pages.flatMap((path): Finding[] => {
    const text = tree.get(path) ?? "";
    const hasStatus = /^Status: (Accepted|Superseded by \[[^\]]+\]\([^)]+\))$/m.test(text);
    const hasParts = ["Context", "Decision", "Consequences"].every((part) => text.includes(`\n## ${part}\n`));
    const isListed = (tree.get(index) ?? "").includes(`](${posix.basename(path)})`);
    return [
      ...(hasStatus ? [] : ['has no line "Status: Accepted" or "Status: Superseded by [title](page)"']),
      ...(hasParts ? [] : ["lacks one of the headings Context, Decision, Consequences"]),
      ...(isListed ? [] : [`is not listed in ${index}; add its line`]),
    ].map((message) => ({ path, line: 0, message }));
  });
  return { checked: pages.length, findings };
}

/** Each word of the code that the glossary explains is a word of the code. Counts words. */
export function glossaryWords(tree: Tree): RuleResult {
  const path = "DEVELOPERS.md";
  const text = tree.get(path) ?? "";
  const start = text.indexOf("\n## Glossary\n");
  const rows = start < 0 ? [] : [...text.slice(start).matchAll(/^\| [^|]*`([^`|]+)`[^|]*\|/gm)];
  const code = [...tree].filter(([file]) => /^(src|shared)\/.*\.tsx?$/.test(file)).map(([, source]) => source);
  const findings = rows.flatMap((row): Finding[] => {
    const word = row[1] ?? "";
    if (code.some((source) => new RegExp(`\\b${word}\\b`).test(source))) return [];
    const line = lineAt(text, start + row.index);
    return [{ path, line, message: `explains ${word}, which is no word of the code; take its row out or correct it` }];
  });
  return { checked: rows.length, findings };
}
