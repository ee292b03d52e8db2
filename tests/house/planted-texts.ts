import { bannedWords, fileNames, wordsInText } from "./banned-words.ts";
import { documentedCommands, documentedPaths, documentsExist } from "./documents.ts";
import type { PlantedRule } from "./planted.ts";
import { documentShapeRules } from "./planted-documents.ts";

const wordRules: PlantedRule[] = [
  {
    title: "no banned word stands in any text",
    rule: wordsInText,
    kept: { "tests/a.test.ts": 'it("counts", () => {});', "README.md": "Counts catheter-days." },
    broken: bannedWords.map(({ pattern, example }) => ({
      files: { "tests/a.test.ts": example.join("") },
      says: `says "${pattern.exec(example.join(""))?.[0].trim() ?? "nothing"}"`,
    })),
  },
  {
    title: "no file is named as a junk drawer",
    rule: fileNames,
    kept: { "src/domain/days/month.ts": "", "tests/house/tree.ts": "" },
    broken: [
      { files: { "src/domain/utils.ts": "" }, says: 'called "utils.ts"' },
      { files: { "src/http/common/reply.ts": "" }, says: 'called "common"' },
      { files: { "src/csv/csv-helpers.ts": "" }, says: 'called "csv-helpers.ts"' },
    ],
  },
];

const documentRules: PlantedRule[] = [
  {
    title: "README.md and DEVELOPERS.md are there",
    rule: documentsExist,
    kept: { "README.md": "Read.", "DEVELOPERS.md": "Change." },
    broken: [{ files: { "README.md": "Read." }, says: "missing or empty" }],
  },
  {
    title: "every command in the documents exists",
    rule: documentedCommands,
    kept: {
      "README.md": "`npm run report -- --data month`, `npm run -s report`, npm start",
      "package.json": '{"scripts":{"report":"","start":""}}',
    },
    broken: [
      { files: { "README.md": "npm run rebuild", "package.json": '{"scripts":{}}' }, says: "npm run rebuild" },
      { files: { "README.md": "Run npm test.", "package.json": '{"scripts":{}}' }, says: "npm run test" },
    ],
  },
  {
    title: "every path in the documents exists",
    rule: documentedPaths,
    kept: {
      "DEVELOPERS.md":
        "See `src/domain/days`, [days](src/domain/days/month.ts), `month.ts` and `src/<room>/<file>.ts`.",
      "src/domain/days/month.ts": "",
    },
    broken: [
      { files: { "DEVELOPERS.md": "See `src/domain/weeks`." }, says: "names src/domain/weeks" },
      { files: { "DEVELOPERS.md": "See `domain/weeks`." }, says: "names domain/weeks" },
      { files: { "README.md": "See [the map](DEVELOPERS.md#map)." }, says: "names DEVELOPERS.md" },
      { files: { "README.md": "```\nnode scripts/weeks.mjs\n```\n" }, says: "names scripts/weeks.mjs" },
    ],
  },
];

/** The rules about words, names and documents. */
export const textRules: readonly PlantedRule[] = [...wordRules, ...documentRules, ...documentShapeRules];
