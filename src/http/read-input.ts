import type { z } from "zod";
import type { Endpoint, Shape } from "../../shared/endpoint.ts";
import { type Fault, Problem } from "../../shared/problems.ts";

/** The three parts of a request as they came, before anybody has looked at them. */
export interface RawInput {
  readonly params: unknown;
  readonly query: unknown;
  readonly body: unknown;
}

/**
 * Reads a request by its contract, and puts parameters, query and body together into one input.
 * Refuses all faults at once: `field-unknown`, `field-missing`, `field-unreadable`. What was sent is never repeated.
 */
export function readInput(endpoint: Endpoint, raw: RawInput): Record<string, unknown> {
  const parts = [
    readPart(endpoint.params, raw.params),
    readPart(endpoint.query, raw.query),
    readPart(endpoint.body, raw.body),
  ];
  const [first, ...more] = parts.flatMap((part) => part.faults);
  if (first) throw new Problem(first, ...more);
  return Object.assign({}, ...parts.map((part) => part.values));
}

function readPart(
  schema: z.ZodObject<Shape, z.core.$strict>,
  raw: unknown,
): { values: Record<string, unknown>; faults: Fault[] } {
  // A request without a query or a body is one with an empty query or body.
  const given = raw ?? {};
  const read = schema.safeParse(given);
  if (read.success) return { values: read.data, faults: [] };
  return { values: {}, faults: read.error.issues.flatMap((issue) => faultsOf(issue, given)) };
}

function faultsOf(issue: z.core.$ZodIssue, given: unknown): Fault[] {
  const pointer = pointerOf(issue.path);
  if (issue.code === "unrecognized_keys") {
    return issue.keys.map((key) => ({
      code: "field-unknown",
      pointer: pointerOf([...issue.path, key]),
      detail: "This field is not known here.",
    }));
  }
  if (valueAt(given, issue.path) === undefined) return [{ code: "field-missing", pointer, detail: "This is missing." }];
  return [{ code: "field-unreadable", pointer, detail: sentence(issue.message) }];
}

/** A JSON pointer (RFC 6901). */
function pointerOf(path: readonly PropertyKey[]): string {
  return path.map((step) => `/${String(step).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  let found = value;
  for (const step of path) {
    if (typeof found !== "object" || found === null) return undefined;
    found = Reflect.get(found, step);
  }
  return found;
}

function sentence(message: string): string {
  const text = message.charAt(0).toUpperCase() + message.slice(1);
  return text.endsWith(".") ? text : `${text}.`;
}
