import { type Finding, lineAt, type RuleResult, type Tree } from "./tree.ts";

/** A word that must not stand in the project. */
export interface BannedWord {
  /** Written so that it does not match its own text. */
  pattern: RegExp;
  /** What to do instead. */
  cure: string;
  /** The files it is banned from; without it, all. */
  within?: RegExp;
  /** A piece of text that breaks the rule, in two parts, so that it does not break it here. */
  example: readonly [string, string];
}

const code = /^(src|shared|tests|scripts)\/.*\.(ts|tsx|mjs)$/;
const product = "speak of the product alone";
const settle = "settle it now, or file it where the work is planned";
const mend = "mend the code instead of silencing the check";

export const bannedWords: readonly BannedWord[] = [
  { pattern: /\bTOD[O]\b/, cure: settle, within: code, example: ["// TO", "DO later"] },
  { pattern: /\bFIXM[E]\b/, cure: settle, within: code, example: ["// FIX", "ME"] },
  { pattern: /\bXX[X]\b/, cure: settle, within: code, example: ["// XX", "X"] },
  { pattern: /eslint-disabl[e]/, cure: mend, example: ["// eslint-", "disable-next-line"] },
  { pattern: /biome-ignor[e]/, cure: mend, example: ["// biome-", "ignore lint: no"] },
  { pattern: /@ts-(ignor[e]|expect-erro[r]|nochec[k])/, cure: mend, example: ["// @ts-", "ignore"] },
  {
    pattern: /\.(ski[p]|onl[y]|tod[o]|skipI[f]|runI[f]|fail[s])\b *[(.]/,
    cure: "let every test run; npm test provides the databases and the browser",
    within: /^tests\//,
    example: ["it.sk", 'ip("counts", () => {})'],
  },
  {
    pattern: /(^|[^a-z])\/(wor[k]|far[m])\//im,
    cure: "use a path inside the project",
    example: ["see /wo", "rk/main"],
  },
  { pattern: /(^|[^a-z])see[d] document/im, cure: product, example: ["the se", "ed document"] },
  { pattern: /(^|[^a-z])trans[c]ript/im, cure: product, example: ["a trans", "cript of"] },
  { pattern: /(^|[^a-z])this (workplac[e]|sessio[n])/im, cure: product, example: ["in this work", "place"] },
  { pattern: /(^|[^a-z])as an a[i]\b/im, cure: product, example: ["as an a", "i, it"] },
  {
    pattern: /(npmj[s]\.(org|com)|debia[n]\.org|pyp[i]\.org)/i,
    cure: "leave the registry to the machine's own settings",
    example: ["registry.npm", "js.org"],
  },
  {
    pattern: /\bNHS[N]\b/i,
    cure: 'cite "CDC Patient Safety Component Manual, chapter N"',
    example: ["by NH", "SN rules"],
  },
];

/** Files that a tool writes, or whose text is fixed. */
const leftAlone = new Set(["package-lock.json", "LICENSE"]);

/** No banned word in any text. Counts files. */
export function wordsInText(tree: Tree): RuleResult {
  const files = [...tree].filter(([path, text]) => text !== "" && !leftAlone.has(path));
  return { checked: files.length, findings: files.flatMap(([path, text]) => judge(path, text)) };
}

function judge(path: string, text: string): Finding[] {
  return bannedWords.flatMap(({ pattern, cure, within }) => {
    const found = within && !within.test(path) ? null : pattern.exec(text);
    return found ? [{ path, line: lineAt(text, found.index), message: `says "${found[0].trim()}"; ${cure}` }] : [];
  });
}

const junkDrawer = /^(utils?|misc|common|helpers?|services?|stuff|general|tools?)$/i;

/** No file or folder named as a junk drawer, in any room. Counts files. */
export function fileNames(tree: Tree): RuleResult {
  const files = [...tree.keys()].filter((path) => code.test(path));
  const findings = files.flatMap((path) => {
    const drawer = path.split("/").find((part) =>
      part
        .split(".")[0]
        ?.split("-")
        .some((word) => junkDrawer.test(word)),
    );
    if (!drawer) return [];
    return [{ path, line: 0, message: `is called "${drawer}"; name it for the one thing that is in it` }];
  });
  return { checked: files.length, findings };
}
