import { z } from "zod";
import { apiBase } from "./api/index.ts";
import { type Endpoint, type InputOf, type OutputOf, type Shape, takesBody } from "./endpoint.ts";
import { AnsweredProblem, problemDocument } from "./problem-document.ts";

/** How a call reaches the server. */
export interface CallOptions {
  /** The server's address without a path, such as `http://127.0.0.1:8460`; empty in a browser. */
  readonly base?: string;
  readonly fetch?: typeof fetch;
  readonly headers?: Readonly<Record<string, string>>;
  /** The key of a creation, which needs one: a new one for each, and the same one when it is sent again. */
  readonly key?: string;
  readonly signal?: AbortSignal;
}

/**
 * Asks an endpoint; the answer is checked against the contract.
 * Throws an {@link AnsweredProblem} for a refusal, the error of `fetch` when nobody answers, and an Error for an answer
 * that this contract does not know: then page and server are of different versions.
 */
export async function call<E extends Endpoint>(
  endpoint: E,
  input: InputOf<E>,
  { base = "", fetch: send = fetch, headers = {}, signal, key }: CallOptions = {},
): Promise<OutputOf<E>> {
  const values = input as Readonly<Record<string, unknown>>;
  const { url, body } = requestOf(endpoint, values);
  const response = await send(base + url, {
    method: endpoint.method,
    headers: {
      accept: "application/json",
      ...(body === null ? {} : { "content-type": "application/json" }),
      ...effectHeaders(endpoint, values, key),
      ...headers,
    },
    ...(body === null ? {} : { body }),
    ...(signal ? { signal } : {}),
  });
  const answer: unknown = await response.json().catch(() => null);
  if (response.ok) {
    const read = endpoint.output.safeParse(answer);
    if (read.success) return read.data as OutputOf<E>;
  } else {
    const refused = problemDocument.safeParse(answer);
    if (refused.success) throw new AnsweredProblem(refused.data);
  }
  throw new Error(`${endpoint.method} ${endpoint.path} answered ${response.status} in a form that is not known here`);
}

function effectHeaders(
  { effect }: Endpoint,
  input: Readonly<Record<string, unknown>>,
  key?: string,
): Record<string, string> {
  if (effect === "creates" && key === undefined) throw new Error("a creation is called without its key");
  if (effect === "creates" && key !== undefined) return { "idempotency-key": key };
  return effect === "updates" ? { "if-match": `"${String(input.seenVersion)}"` } : {};
}

function requestOf(endpoint: Endpoint, input: Readonly<Record<string, unknown>>): { url: string; body: string | null } {
  const params = encoded(endpoint.params, input);
  const path = endpoint.path.replaceAll(/\{(\w+)\}/g, (_, name: string) => encodeURIComponent(String(params[name])));
  const query = Object.entries(encoded(endpoint.query, input)).map(([name, value]) => [name, String(value)]);
  const search = query.length === 0 ? "" : `?${new URLSearchParams(query)}`;
  return {
    url: `${apiBase}${path}${search}`,
    body: takesBody(endpoint) ? JSON.stringify(encoded(endpoint.body, input)) : null,
  };
}

/** The values of one part of the input as they are sent. */
function encoded(
  part: z.ZodObject<Shape, z.core.$strict>,
  input: Readonly<Record<string, unknown>>,
): Record<string, unknown> {
  const own = Object.entries(input).filter(([name, value]) => name in part.shape && value !== undefined);
  return z.encode(part, Object.fromEntries(own)) as Record<string, unknown>;
}
