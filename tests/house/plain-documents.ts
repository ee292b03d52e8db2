import { documentsIn } from "./documents.ts";
import { lineAt, type RuleResult, type Tree, together } from "./tree.ts";

/** Words that documents do not use, what to write instead, and an example. */
export const plainWords: readonly (readonly [RegExp, string, string])[] = [
  [/\b(some|every|any)body\b/i, "say who", "Somebody decides."],
  [/\bnobody\b/i, "say who did not act", "Nobody looked."],
  [/\banew\b/i, "write again", "It counts anew."],
  [/\bstands?\b/i, "write is", "It stands below."],
  [/\blies\b/i, "write is", "It lies in the future."],
  [/\btold\b/i, "write reported, or distinguished", "The fault is told."],
  [/\bput in\b/i, "write inserted, or entered", "It was put in."],
  [/\bmend(s|ed)?\b/i, "write fixed, or corrected", "It is mended."],
  [/\btaken along\b/i, "write exported", "It is taken along."],
  [/\bwhat was said\b/i, "write the earlier version", "It keeps what was said."],
  [/\brooms?\b/i, "write module", "The room has files."],
];

/** Sources of reference values quote their publications. */
const quoted = "tests/reference/data/README.md";

/** No document uses a word of {@link plainWords} outside of `code`. Counts documents. */
export function plainDocuments(tree: Tree): RuleResult {
  return together(
    documentsIn(tree)
      .filter((path) => path !== quoted && tree.has(path))
      .map((path) => {
        const text = tree.get(path) ?? "";
        const prose = text.replace(/`[^`\n]*`|^```[\s\S]*?^```/gm, (code) => code.replace(/[^\n]/g, " "));
        const findings = plainWords.flatMap(([pattern, cure]) => {
          const found = pattern.exec(prose);
          return found ? [{ path, line: lineAt(text, found.index), message: `says "${found[0]}"; ${cure}` }] : [];
        });
        return { checked: 1, findings };
      }),
  );
}
