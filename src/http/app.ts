import Fastify, { type FastifyBaseLogger, type FastifyInstance, LogController } from "fastify";
import { serializerCompiler } from "fastify-type-provider-zod";
import { endpoints } from "../../shared/api/index.ts";
import type { Endpoint } from "../../shared/endpoint.ts";
import { documentMaker } from "../documents/document-maker.ts";
import { closeIdleOnClose } from "./close-idle.ts";
import { compressAnswers } from "./compress-answers.ts";
import { setHeaders } from "./headers.ts";
import { answerHealth } from "./health.ts";
import { type HeavyWork, heavyWorkHere } from "./heavy/heavy-work.ts";
import { readJsonBodies } from "./json-body.ts";
import { type MountOptions, mount } from "./mount.ts";
import { publishOpenApi } from "./openapi.ts";
import { servePageFiles } from "./page-files.ts";
import { answerError, refuseUnknownAddresses } from "./refusals.ts";
import { type Route, routes } from "./routes.ts";

export interface AppOptions extends MountOptions {
  /** The version of the program. */
  readonly version: string;
  /** Where heavy reads are worked out and files made; on this thread without it. */
  readonly heavy?: HeavyWork;
  /** The folder of the built page; without it, no page is served. */
  readonly staticFolder?: string;
  /** Nothing is logged without it. */
  readonly logger?: FastifyBaseLogger;
}

/** A body larger than this is refused; files have their own way in. */
const bodyLimitBytes = 256 * 1024;

/**
 * The HTTP door, ready to listen. `close()` lets requests that are under way finish and drops idle connections; the
 * store stays open.
 */
export async function buildApp(options: AppOptions): Promise<FastifyInstance> {
  const app = emptyApp(options);
  await setHeaders(app);
  compressAnswers(app);
  await publishOpenApi(app, options.version);
  answerHealth(app, options);
  mountAll(app, options);
  const sendPage = options.staticFolder === undefined ? undefined : await servePageFiles(app, options.staticFolder);
  refuseUnknownAddresses(app, Object.values(endpoints), sendPage);
  await app.ready();
  return app;
}

/** The manners of the door, before anything is behind it: limits, numbers of requests, log lines, refusals. */
export function emptyApp({ logger, clock }: Pick<AppOptions, "logger" | "clock">): FastifyInstance {
  // Numbers of requests begin anew with each start of the program, so each start gives them a name of its own.
  const start = clock().toString(36);
  let requests = 0;
  const app = Fastify({
    ...(logger ? { loggerInstance: logger } : { logger: false }),
    logController: new LogController({ disableRequestLogging: true }),
    genReqId: () => `${start}-${++requests}`,
    bodyLimit: bodyLimitBytes,
    requestTimeout: 60_000,
    keepAliveTimeout: 10_000,
    forceCloseConnections: "idle",
    frameworkErrors: answerError,
    routerOptions: { maxParamLength: 200 },
  });
  readJsonBodies(app);
  // Input is read in mount(), where all parts are looked at together.
  app.setValidatorCompiler(() => (value: unknown) => ({ value }));
  app.setSerializerCompiler(serializerCompiler);
  app.setErrorHandler(answerError);
  logReplies(app);
  closeIdleOnClose(app);
  return app;
}

function logReplies(app: FastifyInstance): void {
  app.addHook("onResponse", async (request, reply) => {
    const route = request.routeOptions.url ?? null;
    const durationMs = Math.round(reply.elapsedTime);
    request.log.info({ method: request.method, route, status: reply.statusCode, durationMs }, "answered");
  });
}

function mountAll(app: FastifyInstance, options: AppOptions): void {
  const { store, version } = options;
  const heavy = options.heavy ?? heavyWorkHere({ store, documents: documentMaker({ version, browserPath: null }) });
  for (const [name, endpoint] of Object.entries<Endpoint>(endpoints)) {
    // The cast is safe: the table of routes has the endpoint's own route under the endpoint's name.
    const route = routes[name as keyof typeof routes] as Route<Endpoint>;
    mount(app, { name, endpoint, route }, { ...options, heavy });
  }
}
