import { call, callForCsv, callForFile } from "../../../shared/call.ts";
import type { Endpoint, InputOf, OutputOf } from "../../../shared/endpoint.ts";
import { AnsweredProblem } from "../../../shared/problem-document.ts";
import type { DocumentType } from "../../../shared/report-document.ts";
import { acknowledgeHeader } from "../../../shared/signed-changes.ts";
import { fetchOrTake } from "./early-questions.ts";
import { personHeaders } from "./played-person.ts";

/** What a question to the server came to. */
export type Reply<T> =
  | { readonly state: "answered"; readonly value: T }
  | { readonly state: "refused"; readonly problem: AnsweredProblem }
  | { readonly state: "unreachable" };

/**
 * Asks an endpoint as the person who sits here. Never throws for what can happen: a refusal, and a server that is not
 * there, are replies. `key` is the key of a creation: the same one when it is sent again. `acknowledged` says that changes of
 * signed months are right, as an earlier refusal named them.
 */
export async function ask<E extends Endpoint>(
  endpoint: E,
  input: InputOf<E>,
  { signal, key, acknowledged }: { signal?: AbortSignal; key?: string; acknowledged?: string | null } = {},
): Promise<Reply<OutputOf<E>>> {
  const headers = { ...personHeaders(), ...(acknowledged ? { [acknowledgeHeader]: acknowledged } : {}) };
  try {
    const value = await call(endpoint, input, {
      headers,
      fetch: fetchOrTake,
      ...(signal ? { signal } : {}),
      ...(key === undefined ? {} : { key }),
    });
    return { state: "answered", value };
  } catch (error) {
    return error instanceof AnsweredProblem ? { state: "refused", problem: error } : { state: "unreachable" };
  }
}

/** The rows of a sheet as CSV; null when it was refused or nobody answered. */
export async function askForCsv<E extends Endpoint>(endpoint: E, input: InputOf<E>): Promise<string | null> {
  return callForCsv(endpoint, input, { headers: personHeaders() }).catch(() => null);
}

/** A document as a file of that type; null when it was refused or nobody answered. */
export async function askForFile<E extends Endpoint>(
  endpoint: E,
  input: InputOf<E>,
  type: DocumentType,
): Promise<Blob | null> {
  return callForFile(endpoint, input, { type, headers: personHeaders() }).catch(() => null);
}

/** A new key for a creation. Works also where the page is not served over an encrypted connection. */
export function newKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
