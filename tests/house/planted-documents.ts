import { decisionPages, documentLengths, documentLinks, glossaryWords, moduleReadmes } from "./document-shape.ts";
import { plainDocuments, plainWords } from "./plain-documents.ts";
import type { PlantedRule } from "./planted.ts";

const lines = (count: number) => "A line.\n".repeat(count);
const decision = "# Title\n\nStatus: Accepted\n\n## Context\n\n## Decision\n\n## Consequences\n";
const charts = "# charts\n\nMay import: `shared`; no package. Start with `chart.ts`.\n";
const index = { "docs/decisions/README.md": "- [One](one.md)" };

/** The rules about the shape of documents. */
export const documentShapeRules: readonly PlantedRule[] = [
  {
    title: "documents keep their length",
    rule: documentLengths,
    kept: { "README.md": lines(200), "DEVELOPERS.md": lines(150), "src/charts/README.md": lines(15) },
    broken: [
      { files: { "README.md": lines(201) }, says: "shorten it to 200" },
      { files: { "DEVELOPERS.md": lines(151) }, says: "shorten it to 150" },
      { files: { "src/charts/README.md": lines(16) }, says: "shorten it to 15" },
      { files: { "docs/decisions/one.md": lines(41) }, says: "shorten it to 40" },
    ],
  },
  {
    title: "each module has a README.md that says what it may import",
    rule: moduleReadmes,
    kept: { "src/charts/chart.ts": "", "src/charts/README.md": charts },
    broken: [
      { files: { "src/charts/chart.ts": "" }, says: "is missing" },
      { files: { "src/domain/days/zone.ts": "" }, says: "is missing" },
      { files: { "prisma/schema.prisma": "" }, says: "is missing" },
      { files: { "src/charts/README.md": charts.replace("shared", "src/store") }, says: "rooms.ts says shared" },
    ],
  },
  {
    title: "every link between documents leads to a file and a heading",
    rule: documentLinks,
    kept: {
      "README.md": "[days](docs/days.md#of-one-stay) and [the web](https://example.org/none)",
      "docs/days.md": "# Days\n\n## Of one stay!\n\n[up](../README.md), [here](#days)",
    },
    broken: [
      { files: { "README.md": "[days](docs/days.md)" }, says: "links to docs/days.md" },
      { files: { "docs/days.md": "[up](README.md)", "README.md": "" }, says: "links to README.md" },
      { files: { "README.md": "# Days\n\n[here](#weeks)" }, says: "links to #weeks" },
    ],
  },
  {
    title: "each decision has a status, its parts and its line in the index",
    rule: decisionPages,
    kept: {
      ...index,
      "docs/decisions/one.md": decision.replace("Accepted", "Superseded by [Two](two.md)"),
    },
    broken: [
      { files: { ...index, "docs/decisions/one.md": decision.replace("Accepted", "Perhaps") }, says: "has no line" },
      { files: { ...index, "docs/decisions/one.md": decision.replace("## Context", "") }, says: "lacks one" },
      { files: { ...index, "docs/decisions/two.md": decision }, says: "is not listed" },
    ],
  },
  {
    title: "the glossary explains words of the code",
    rule: glossaryWords,
    kept: { "DEVELOPERS.md": "# A\n\n## Glossary\n\n| unit, `ward` | a place |\n", "src/a.ts": "const ward = 1;" },
    broken: [
      { files: { "DEVELOPERS.md": "\n## Glossary\n\n| `wart` | a place |\n", "src/a.ts": "" }, says: "explains wart" },
    ],
  },
  {
    title: "documents use plain words",
    rule: plainDocuments,
    kept: { "README.md": "No one reviewed it. `put in` is a name in code." },
    broken: plainWords.map(([pattern, , example]) => ({
      files: { "README.md": example },
      says: `says "${pattern.exec(example)?.[0]}"`,
    })),
  },
];
