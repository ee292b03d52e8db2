import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { z } from "zod";

const folder = new URL("./data/", import.meta.url);

const referenceCase = z.object({
  id: z.string(),
  title: z.string(),
  inputs: z.record(z.string(), z.unknown()),
  expected: z.record(z.string(), z.unknown()),
  source: z.object({ title: z.string(), year: z.string() }),
  status: z.string(),
  from_memory: z.boolean(),
});
export type ReferenceCase = z.infer<typeof referenceCase>;

/** The cases of one reference file of `data/`. */
export function readCases(file: string): ReferenceCase[] {
  const text = readFileSync(new URL(file, folder), "utf8");
  return z.object({ cases: z.array(referenceCase) }).parse(JSON.parse(text)).cases;
}

/** The rows of one CSV file of `data/`, every value as the text that was printed. */
export function readRows(file: string): Record<string, string>[] {
  const rows: unknown = parse(readFileSync(new URL(file, folder), "utf8"), { columns: true });
  return z.array(z.record(z.string(), z.string())).parse(rows);
}

/** The test title of a case: id, title, source, status, and "from memory" where it was not read. */
export function titleOf(one: ReferenceCase): string {
  const memory = one.from_memory ? ", from memory" : "";
  return `${one.id} ${one.title} [${one.source.title}, ${one.source.year}; ${one.status}${memory}]`;
}
