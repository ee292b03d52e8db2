import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { matchOrganism, reaches, readCount } from "../../src/domain/criteria/index.ts";

/** The wordings of a table, each with what it must be read as. */
function wordings(name: "names" | "counts"): (readonly [wording: string, must: string])[] {
  const lines = readFileSync(new URL(`data/wordings/${name}.txt`, import.meta.url), "utf8").split("\n");
  let must = "";
  return lines.flatMap((line) => {
    if (line.startsWith("= ")) must = line.slice(2);
    if (line === "" || line.startsWith("#") || line.startsWith("= ")) return [];
    const [wording = "", note = ""] = line.split(" | ");
    if (note === "waits") return [[wording, note] as const];
    return [[wording, note.startsWith("= ") ? note.slice(2) : must] as const];
  });
}

/** What a name is read as, in the words of the table. */
function nameRead(wording: string): string {
  const identity = matchOrganism(wording);
  if (!identity) return "waits";
  const { key, group, genus } = identity;
  if (group === "mixed-flora" || group === "no-growth") return group;
  return genus === null && /^[a-z]/.test(key) ? `${group}: ${key}` : key;
}

function countRead(wording: string): string {
  const count = readCount(wording);
  const answer = reaches(count, 100_000);
  return answer === "unknown" ? count.kind : answer;
}

describe("laboratory wordings of the table", () => {
  it("are at least 300, each once", () => {
    const tables = [wordings("names"), wordings("counts")].map((rows) => rows.map(([wording]) => wording));
    expect(tables.flat().length).toBeGreaterThanOrEqual(300);
    for (const all of tables) expect(all).toEqual([...new Set(all)]);
  });

  it.each(wordings("names"))("name %j is read as %s", (wording, must) => {
    expect(nameRead(wording)).toBe(must);
  });

  it.each(wordings("counts"))("count %j is read as %s", (wording, must) => {
    expect(countRead(wording)).toBe(must);
  });
});
