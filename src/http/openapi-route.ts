import type { FastifySchema } from "fastify";
import { type Endpoint, takesBody } from "../../shared/endpoint.ts";
import { permissions } from "../../shared/permissions.ts";
import { problemDocument, problemMediaType } from "../../shared/problem-document.ts";
import { type ProblemCode, problems } from "../../shared/problems.ts";

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

/** What Fastify is told of an endpoint: how it appears in the published description, and how its answers are checked. */
export function routeSchema(name: string, endpoint: Endpoint): FastifySchema {
  const { params, query, body, output, summary, permission, path } = endpoint;
  const parts = {
    ...(Object.keys(params.shape).length > 0 ? { params } : {}),
    ...(Object.keys(query.shape).length > 0 ? { querystring: query } : {}),
    ...(takesBody(endpoint) ? { body } : {}),
  };
  return {
    ...parts,
    operationId: name,
    summary,
    description: `Permission: ${permissions[permission].toLowerCase()}.`,
    tags: [path.split("/")[1] ?? path],
    response: {
      200: { description: "Done", content: { "application/json": { schema: output } } },
      ...refusals(endpoint),
    },
  };
}

/** One description for each status, which names the codes that may come with it. */
function refusals(endpoint: Endpoint): Record<string, object> {
  const codes = new Set<ProblemCode>([
    ...anyCall,
    ...(endpoint.wards === "ward" ? ["not-found" as const] : []),
    ...(takesBody(endpoint) ? (["media-type-unknown", "request-too-large"] as const) : []),
    ...endpoint.errors,
  ]);
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
