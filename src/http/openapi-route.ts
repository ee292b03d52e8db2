import type { FastifySchema } from "fastify";
import { z } from "zod";
import { type Effect, type Endpoint, namedBy, takesBody } from "../../shared/endpoint.ts";
import { permissions } from "../../shared/permissions.ts";
import { problemDocument, problemMediaType } from "../../shared/problem-document.ts";
import { type ProblemCode, problems } from "../../shared/problems.ts";
import { acknowledgeHeader } from "../../shared/signed-changes.ts";
import { fileTypes } from "./files.ts";

/** The refusals that any call may meet. */
const anyCall: readonly ProblemCode[] = [
  "request-unreadable",
  "not-signed-in",
  "not-permitted",
  "field-unknown",
  "field-missing",
  "field-unreadable",
  "internal-error",
  "database-unreachable",
];

const bodyErrors: readonly ProblemCode[] = [
  "media-type-unknown",
  "request-too-large",
  "json-name-repeated",
  "json-too-deep",
  "json-value-unusable",
];

/** Any write can change a signed month. */
const acknowledged = z
  .string()
  .optional()
  .describe("The digits of a refusal with changes-signed-month: record it all the same");

/** What each effect asks of the headers of a request. */
const effectHeaders: Readonly<Record<Exclude<Effect, "reads">, z.ZodType>> = {
  creates: z.object({
    "idempotency-key": z.string().min(1).max(200).describe("A new one for each creation; sent again, it is done once"),
    [acknowledgeHeader]: acknowledged,
  }),
  updates: z.object({
    "if-match": z.string().describe('The version that you saw, in quotes: "3"'),
    [acknowledgeHeader]: acknowledged,
  }),
};

const effectErrors: Readonly<Record<Effect, readonly ProblemCode[]>> = {
  reads: [],
  creates: [
    ...(["idempotency-key-missing", "idempotency-key-unreadable", "idempotency-key-reused"] as const),
    "changes-signed-month",
  ],
  updates: ["version-missing", "version-unreadable", "stale-version", "changes-signed-month"],
};

/** What Fastify is told of an endpoint: how it appears in the published description, and how its answers are checked. */
export function routeSchema(name: string, endpoint: Endpoint): FastifySchema {
  const { params, query, body, output, summary, permission, path, effect } = endpoint;
  const parts = {
    ...(Object.keys(params.shape).length > 0 ? { params } : {}),
    ...(Object.keys(query.shape).length > 0 ? { querystring: query } : {}),
    ...(takesBody(endpoint) ? { body } : {}),
    ...(effect === "reads" ? {} : { headers: effectHeaders[effect] }),
  };
  return {
    ...parts,
    operationId: name,
    summary,
    description: `Permission: ${permissions[permission].toLowerCase()}.`,
    tags: [path.split("/")[1] ?? path],
    response: {
      200: { description: "Done", content: { "application/json": { schema: output }, ...fileContent(endpoint) } },
      ...refusals(endpoint),
    },
  };
}

/** A sheet is also answered as CSV, a document as files of several types. */
function fileContent(endpoint: Endpoint): Record<string, object> {
  const said = { "text/csv": "The rows of the sheet, by column" } as Readonly<Record<string, string>>;
  const bytes = "The document as a file";
  return Object.fromEntries(
    fileTypes(endpoint).map((type) => [type, { schema: z.string().describe(said[type] ?? bytes) }]),
  );
}

/** Every code with which an endpoint refuses, as it is published. */
export function publishedCodes(endpoint: Endpoint): ReadonlySet<ProblemCode> {
  return new Set<ProblemCode>([
    ...anyCall,
    ...(namedBy(endpoint.wards) === null ? [] : ["not-found" as const]),
    ...effectErrors[endpoint.effect],
    ...(takesBody(endpoint) ? bodyErrors : []),
    ...(endpoint.heavy ? (["service-busy"] as const) : []),
    ...endpoint.errors,
  ]);
}

/** One description for each status, which names the codes that may come with it. */
function refusals(endpoint: Endpoint): Record<string, object> {
  const codes = publishedCodes(endpoint);
  const statuses = new Set([...codes].map((code) => problems[code].status));
  const entries = [...statuses].map((status): [string, object] => [
    String(status),
    {
      description: [...codes]
        .filter((code) => problems[code].status === status)
        .map((code) => `${code}: ${problems[code].title}.`)
        .join(" "),
      content: { [problemMediaType]: { schema: problemDocument } },
    },
  ]);
  return Object.fromEntries(entries);
}
