import swagger from "@fastify/swagger";
import swaggerUi from "@fastify/swagger-ui";
import type { FastifyInstance } from "fastify";
import { jsonSchemaTransform, jsonSchemaTransformObject } from "fastify-type-provider-zod";
import { apiBase } from "../../shared/api-base.ts";

/** Where the published description is. */
const documentPath = `${apiBase}/openapi.json`;

type Transform = NonNullable<Parameters<typeof jsonSchemaTransformObject>[0]>;

/** Publishes the description of all endpoints that are mounted afterwards (OpenAPI 3.1), and a page of it for people. */
export async function publishOpenApi(app: FastifyInstance, version: string): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: "3.1.0",
      info: {
        title: "Dwell Ledger",
        version,
        description:
          "Patient-days, catheter-days and what stands behind them. Null is missing, never zero. " +
          "A refusal is a problem document (RFC 9457) that lists everything found wrong.",
        license: { name: "Apache-2.0", identifier: "Apache-2.0" },
      },
      servers: [{ url: "/" }],
    },
    hideUntagged: true,
    transform: jsonSchemaTransform,
    transformObject: (document) => usedOnly(jsonSchemaTransformObject(document as Transform)),
  });
  await app.register(swaggerUi, {
    routePrefix: "/docs",
    theme: { title: "Dwell Ledger API" },
    uiConfig: { layout: "BaseLayout", docExpansion: "list", defaultModelsExpandDepth: 0, tryItOutEnabled: true },
  });
  app.get(documentPath, { schema: { hide: true } }, async () => app.swagger());
}

/** The document without the shapes that nothing in it refers to: each is written once for asking and once for answers. */
function usedOnly<Document extends object>(document: Document): Document {
  const { components, ...rest } = document as { components?: { schemas?: Record<string, unknown> } };
  const all = components?.schemas ?? {};
  const used = new Set<string>();
  const visit = (part: unknown): void => {
    for (const [, name = ""] of JSON.stringify(part ?? null).matchAll(/"#\/components\/schemas\/(\w+)"/g)) {
      if (used.has(name)) continue;
      used.add(name);
      visit(all[name]);
    }
  };
  visit(rest);
  const schemas = Object.fromEntries(Object.entries(all).filter(([name]) => used.has(name)));
  // The cast is safe: only shapes were left out.
  return { ...rest, components: { ...components, schemas } } as unknown as Document;
}
