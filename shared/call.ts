import { z } from "zod";
import { apiBase } from "./api-base.ts";
import { type Endpoint, type InputOf, type OutputOf, type Shape, takesBody } from "./endpoint.ts";
import { AnsweredProblem, problemDocument } from "./problem-document.ts";
import type { DocumentType } from "./report-document.ts";
import { csvMediaType } from "./sheet.ts";

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
  options: CallOptions = {},
): Promise<OutputOf<E>> {
  const response = await sent(endpoint, input, { accept: "application/json", ...options });
  const answer: unknown = await response.json().catch(() => null);
  const read = endpoint.output.safeParse(answer);
  if (read.success) return read.data as OutputOf<E>;
  throw unknownForm(endpoint, response);
}

/**
 * Asks an endpoint that answers with a sheet for its rows as CSV. Throws as {@link call} does, also an Error for an
 * endpoint without a sheet.
 */
export async function callForCsv<E extends Endpoint>(
  endpoint: E,
  input: InputOf<E>,
  options: CallOptions = {},
): Promise<string> {
  const response = await sent(endpoint, input, { accept: csvMediaType, ...options });
  if (response.headers.get("content-type")?.startsWith(csvMediaType)) return response.text();
  throw unknownForm(endpoint, response);
}

/**
 * Asks an endpoint that answers with a document for its file. Throws as {@link call} does, also an Error for an endpoint
 * without a document.
 */
export async function callForFile<E extends Endpoint>(
  endpoint: E,
  input: InputOf<E>,
  { type, ...options }: CallOptions & { type: DocumentType },
): Promise<Blob> {
  const response = await sent(endpoint, input, { accept: type, ...options });
  if (response.headers.get("content-type")?.startsWith(type)) return response.blob();
  throw unknownForm(endpoint, response);
}

/** What was answered, when it was not a refusal. */
async function sent<E extends Endpoint>(
  endpoint: E,
  input: InputOf<E>,
  { accept, base = "", fetch: send = fetch, headers = {}, signal, key }: CallOptions & { accept: string },
): Promise<Response> {
  const values = input as Readonly<Record<string, unknown>>;
  const { url, body } = requestOf(endpoint, values);
  const response = await send(base + url, {
    method: endpoint.method,
    headers: {
      accept,
      ...(body === null ? {} : { "content-type": "application/json" }),
      ...effectHeaders(endpoint, values, key),
      ...headers,
    },
    ...(body === null ? {} : { body }),
    ...(signal ? { signal } : {}),
  });
  if (response.ok) return response;
  const refused = problemDocument.safeParse(await response.json().catch(() => null));
  throw refused.success ? new AnsweredProblem(refused.data) : unknownForm(endpoint, response);
}

function unknownForm({ method, path }: Endpoint, { status }: Response): Error {
  return new Error(`${method} ${path} answered ${status} in a form that is not known here`);
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
    body: takesBody(endpoint) ? JSON.stringify(encodedOrAsWritten(endpoint.body, input)) : null,
  };
}

type Part = z.ZodObject<Shape, z.core.$strict>;

/** The values of one part of the input as they are sent. Throws an Error for what the contract would refuse. */
function encoded(part: Part, input: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return z.encode(part, ownOf(part, input)) as Record<string, unknown>;
}

/**
 * {@link encoded}, and what the contract would refuse is sent as it was written: whoever typed it is told by the server
 * what is wrong with each field, and how to mend it.
 */
function encodedOrAsWritten(part: Part, input: Readonly<Record<string, unknown>>): object {
  const own = ownOf(part, input);
  const read = z.safeEncode(part, own as never);
  return read.success ? read.data : own;
}

function ownOf({ shape }: Part, input: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(input).filter(([name, value]) => name in shape && value !== undefined));
}
