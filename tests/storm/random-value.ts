import naughty from "big-list-of-naughty-strings/blns.json" with { type: "json" };
import type { Chance } from "../ledger/chance.ts";

/** A JSON schema as the published description has it. */
export interface Schema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly anyOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: Schema | boolean;
  readonly items?: Schema;
  readonly format?: string;
  readonly pattern?: string;
  readonly minimum?: number;
  readonly maximum?: number;
}

/** What a value is drawn with. */
export interface Drawing {
  readonly chance: Chance;
  /** The schemas that others refer to. */
  readonly shapes: Readonly<Record<string, Schema>>;
  /** Values that exist, by the name of the field. */
  readonly known: (name: string) => unknown;
  /** Percent of values that are well formed. */
  readonly tame: number;
}

const times = [
  "2026-11-12T09:00",
  "2026-11-15T10:30:00-05:00",
  "2026-11-01T01:30",
  "2026-03-08T02:30",
  "2031-01-01T00:00",
];
const numbers = [0, 1, -1, 2, 7, 12, 14, 10, 400, 1.5, 1e6, 2_147_483_647, 2_147_483_648, -0.5];
const texts: readonly string[] = naughty;

/** A value of a schema: mostly one that fits, sometimes one that does not. */
export function randomValue(schema: Schema, name: string, drawing: Drawing): unknown {
  const { chance, shapes, known, tame } = drawing;
  if (schema.$ref) return randomValue(shapes[schema.$ref.split("/").at(-1) ?? ""] ?? {}, name, drawing);
  if (!chance.percent(tame)) return chance.pick([null, "", chance.pick(texts), chance.pick(numbers), [], {}, true]);
  const real = known(name);
  if (real !== undefined && chance.percent(92)) return real;
  if (schema.const !== undefined) return schema.const;
  if (schema.enum) return chance.pick(schema.enum);
  if (schema.anyOf) return randomValue(chance.pick(schema.anyOf), name, drawing);
  const type = typeof schema.type === "string" ? schema.type : schema.type?.[0];
  if (type === "object" || schema.properties) return randomObject(schema, drawing);
  if (type === "array")
    return Array.from({ length: chance.below(3) }, () => randomValue(schema.items ?? {}, "item", drawing));
  if (type === "boolean") return chance.percent(50);
  if (type === "integer" || type === "number") return randomNumber(schema, type, chance);
  if (type === "null") return null;
  return randomText(schema, name, chance);
}

function randomObject(schema: Schema, drawing: Drawing): Record<string, unknown> {
  const { chance } = drawing;
  const required = new Set(schema.required ?? []);
  const entries = Object.entries(schema.properties ?? {}).flatMap(([name, of]) =>
    (required.has(name) ? chance.percent(98) : chance.percent(45)) ? [[name, randomValue(of, name, drawing)]] : [],
  );
  if (chance.percent(1)) entries.push([chance.pick(["extra", "id", "__proto_", ""]), 1]);
  return Object.fromEntries(entries) as Record<string, unknown>;
}

function randomNumber({ minimum = 0, maximum = 500 }: Schema, type: string, chance: Chance): number {
  if (chance.percent(10)) return chance.pick(numbers);
  const span = Math.max(1, Math.min(maximum - minimum, 500));
  return minimum + chance.below(span) + (type === "number" && chance.percent(20) ? 0.5 : 0);
}

function randomText({ format, pattern }: Schema, name: string, chance: Chance): string {
  if (/At$|^at$/.test(name)) return chance.pick(times);
  if (format === "date-time" || name === "from" || name === "to")
    return chance.pick(["2026-11-12T00:00:00Z", "2026-11-19T10:00:00.000Z"]);
  if (format === "date" || /[dD]ay$/.test(name))
    return chance.pick(["2026-11-04", "2026-11-20", "2026-11-12", "1996-02-29"]);
  if (name === "month") return chance.pick(["2026-11", "2026-10", "2025-12"]);
  if (pattern?.includes("HH") || name === "reviewDueAt") return "10:00";
  if (chance.percent(20)) return chance.pick(texts);
  return `x${chance.below(1_000_000)}`;
}
