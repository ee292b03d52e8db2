import type { Subjects } from "../http/subjects.ts";
import type { Chance } from "../ledger/chance.ts";
import { type Drawing, randomValue, type Schema } from "./random-value.ts";

/** An operation of the published description. */
export interface Operation {
  readonly id: string;
  readonly method: "GET" | "POST" | "PUT";
  readonly path: string;
  readonly parameters: readonly { readonly name: string; readonly in: string; readonly schema: Schema }[];
  readonly body: Schema | null;
  readonly statuses: readonly string[];
}

interface Described {
  readonly operationId: string;
  readonly parameters?: Operation["parameters"];
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly schema: Schema }>> };
  readonly responses: Readonly<Record<string, unknown>>;
}

/** All operations of a published description. */
export function operationsOf(document: { paths: Record<string, Record<string, Described>> }): Operation[] {
  return Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, { operationId, parameters = [], requestBody, responses }]) => ({
      id: operationId,
      method: method.toUpperCase() as Operation["method"],
      path,
      parameters,
      body: requestBody?.content["application/json"]?.schema ?? null,
      statuses: Object.keys(responses),
    })),
  );
}

/** What requests are drawn from. */
export interface RequestSource {
  readonly chance: Chance;
  readonly operations: readonly Operation[];
  readonly shapes: Readonly<Record<string, Schema>>;
  /** Numbers of people who may be played. */
  readonly people: readonly number[];
  readonly situations: readonly Subjects[];
}

/** A request of any operation by any person about any record; most of them are well formed. */
export function randomRequest({ chance, operations, shapes, people, situations }: RequestSource) {
  const operation = chance.pick(operations);
  const about: Readonly<Record<string, unknown>> = { ...chance.pick(situations) };
  // The first person and the first records are those that may do most.
  const person = chance.percent(60) ? people[0] : chance.pick(people);
  const own = chance.percent(60) ? { ...situations[0] } : about;
  const tame = chance.percent(75) ? 100 : 85;
  const known = (name: string) => (name === "fromId" ? own.otherPatientId : (own as Record<string, unknown>)[name]);
  const drawing: Drawing = { chance, shapes, known, tame };
  const values = operation.parameters.map(({ name, in: place, schema }) => ({
    ...{ name, place },
    value: String(randomValue(schema, name, drawing) ?? ""),
  }));
  const ofPlace = (place: string) => values.filter((value) => value.place === place);
  const address = ofPlace("path").reduce(
    (path, { name, value }) => path.replace(`{${name}}`, encodeURIComponent(value || "0")),
    operation.path,
  );
  const asked = ofPlace("query").filter(() => chance.percent(40) || operation.id === "listChanges");
  const query = new URLSearchParams(asked.map(({ name, value }) => [name, value])).toString();
  const needed = new Set(operation.parameters.filter(({ in: place }) => place === "header").map(({ name }) => name));
  return {
    operation,
    method: operation.method,
    url: query === "" ? address : `${address}?${query}`,
    headers: {
      "x-demo-person": String(person),
      ...(needed.has("idempotency-key") && chance.percent(98) ? { "idempotency-key": `k${chance.below(1e9)}` } : {}),
      ...(needed.has("if-match") && chance.percent(98) ? { "if-match": `"${1 + chance.below(3)}"` } : {}),
      ...(operation.body ? { "content-type": "application/json" } : {}),
    },
    ...(operation.body ? { payload: JSON.stringify(randomValue(operation.body, "body", drawing)) } : {}),
  };
}
