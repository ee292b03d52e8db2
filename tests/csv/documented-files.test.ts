import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { Problem } from "../../shared/problems.ts";
import { defaultSourceSettings } from "../../shared/source-settings.ts";
import type { CellReader } from "../../src/csv/column.ts";
import { layouts } from "../../src/csv/layout.ts";
import { catheterKindWords, dispositionWords, indicationWords, sexWords } from "../../src/csv/other-words.ts";
import { zoneNamed } from "../../src/domain/days/zone.ts";

const text = readFileSync(new URL("../../docs/files.md", import.meta.url), "utf8");

/** The rows of the table under a heading, cell by cell. */
function rowsUnder(heading: string): string[][] {
  const section = text.split(`\n## ${heading}\n`)[1]?.split("\n## ")[0] ?? "";
  const rows = section.split("\n").filter((line) => line.startsWith("| `"));
  return rows.map((row) => row.split(" | ").map((cell) => cell.replace(/^\| | \|$/g, "").trim()));
}

const inCode = (cell: string) => [...cell.matchAll(/`([^`]+)`/g)].map(([, word = ""]) => word);

/** The words that a closed list names when it refuses another one; null for a reader of something else. */
function wordsOf({ read }: Pick<CellReader<unknown>, "read">): string[] | null {
  try {
    read("no such word", { zone: zoneNamed("UTC"), settings: defaultSourceSettings, mark: () => undefined });
    return null;
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const list = /^This is none of: (.*)\.$/.exec(error.faults[0]?.detail ?? "")?.[1];
    return list?.split(", ") ?? null;
  }
}

describe("docs/files.md", () => {
  it("has each file in the order of reading", () => {
    expect([...text.matchAll(/^## ([a-z-]+\.csv)$/gm)].map(([, name]) => name)).toEqual(
      layouts.map(({ name }) => name),
    );
  });

  it.each(layouts.map((layout) => [layout.name, layout] as const))("has the columns of %s", (name, { columns }) => {
    const wanted = Object.entries(columns).map(([column, { isRequired }]) => [column, isRequired ? "yes" : "no"]);
    expect(rowsUnder(name).map(([column = "", needed]) => [...inCode(column), needed])).toEqual(wanted);
  });

  it.each(layouts.map((layout) => [layout.name, layout] as const))("has every word of %s", (name, { columns }) => {
    const lists = Object.entries(columns).map(([column, { reader, isRequired, whenEmpty }]) => {
      const words = wordsOf(reader);
      return words === null ? [column] : [column, ...words, ...(isRequired || whenEmpty === null ? [] : [whenEmpty])];
    });
    const documented = rowsUnder(name).map(([column = "", , value = ""]) => [
      ...inCode(column),
      ...(value.startsWith("one of ") ? inCode(value) : []),
    ]);
    expect(documented).toEqual(lists);
  });

  it("has the words that other systems write, and no more", () => {
    const own = { sex: sexWords, kind: catheterKindWords, indication: indicationWords, disposition: dispositionWords };
    const wanted = Object.entries(own).flatMap(([column, words]) =>
      Object.entries(words).map(([other, word]) => `${column}: ${other} is ${word}`),
    );
    const documented = rowsUnder("Words of other systems").flatMap(([column = "", word = "", others = ""]) =>
      inCode(others).map((other) => `${inCode(column)}: ${other} is ${inCode(word)}`),
    );
    expect(documented.toSorted()).toEqual(wanted.toSorted());
  });
});
