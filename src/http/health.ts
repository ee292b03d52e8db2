import type { FastifyInstance } from "fastify";
import type { Store } from "../usecases/act.ts";
import { checkHealth } from "../usecases/jobs/check-health.ts";

/** Tells whoever watches the service that it runs and reaches its database; else the problem that keeps it from it. */
export function answerHealth(app: FastifyInstance, { store, version }: { store: Store; version: string }): void {
  app.get("/health", { schema: { hide: true } }, async () => {
    await checkHealth(store);
    return { status: "ok", version };
  });
}
