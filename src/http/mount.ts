import { createHash } from "node:crypto";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { apiBase } from "../../shared/api-base.ts";
import { type Endpoint, type InputOf, namedBy } from "../../shared/endpoint.ts";
import { permissions } from "../../shared/permissions.ts";
import { refuse } from "../../shared/problems.ts";
import { acknowledgeHeader } from "../../shared/signed-changes.ts";
import type { Act, Actor, Store } from "../usecases/act.ts";
import { findImport } from "../usecases/imports/find-import.ts";
import { watchSignedMonths } from "../usecases/months/watch-signed-months.ts";
import { once } from "../usecases/once.ts";
import { type Reach, reachOf } from "../usecases/reach.ts";
import { findRecord } from "../usecases/record/find-record.ts";
import { findWard } from "../usecases/wards/find-ward.ts";
import { asFile, fileTypeAsked } from "./files.ts";
import { askHeavy } from "./heavy/ask-heavy.ts";
import type { HeavyWork } from "./heavy/heavy-work.ts";
import { routeSchema } from "./openapi-route.ts";
import { readInput } from "./read-input.ts";
import { acknowledgedChanges, idempotencyKey, seenVersion } from "./request-headers.ts";
import type { Route } from "./routes.ts";

/** Tells who sends a request. Refuses `not-signed-in`. */
export type PrincipalOf = (request: FastifyRequest) => Promise<Actor>;

/** What every endpoint is mounted with. */
export interface MountOptions {
  readonly store: Store;
  /** The present instant in UTC milliseconds; read once for each request. */
  readonly clock: () => number;
  readonly principalOf: PrincipalOf;
}

const jsonType = "application/json; charset=utf-8";

/** The way of every request: who asks, may they, what do they ask, of whose record; then the use case answers. */
export function mount<E extends Endpoint>(
  app: FastifyInstance,
  { name, endpoint, route }: { name: string; endpoint: E; route: Route<E> },
  { store, clock, principalOf, heavy }: MountOptions & { readonly heavy: HeavyWork },
): void {
  app.route({
    method: endpoint.method,
    url: apiBase + endpoint.path.replaceAll(/\{(\w+)\}/g, ":$1"),
    schema: routeSchema(name, endpoint),
    ...(endpoint.bodyBytes === undefined ? {} : { bodyLimit: endpoint.bodyBytes }),
    handler: async (request, reply) => {
      const actor = await principalOf(request);
      const reach = permittedReach(actor, endpoint);
      const asking = { acknowledged: acknowledgedChanges(request.headers[acknowledgeHeader]), reach };
      const watchedStore = watchSignedMonths(store, endpoint.effect === "reads" ? undefined : asking);
      const act: Act = { store: watchedStore, actor, now: clock() };
      const input = { ...readInput(endpoint, request), ...seen(endpoint, request) };
      const key = endpoint.effect === "creates" ? idempotencyKey(request.headers["idempotency-key"]) : null;
      const carryOut = async (by: Act) => {
        await inReach(by, { endpoint, input, reach });
        // The cast is safe: the input was read by this very endpoint's schemas.
        return route(by, input as InputOf<E>, reach) as Promise<object>;
      };
      const digest = createHash("sha256")
        .update(JSON.stringify([name, input]))
        .digest("hex");
      const heavily = async () => {
        await inReach(act, { endpoint, input, reach });
        return askHeavy(act, heavy, { name, input, reach, asText: fileTypeAsked(endpoint, request) === null });
      };
      const lightly = () => (key === null ? carryOut(act) : once(act, { key, digest }, carryOut));
      const answer = endpoint.heavy ? await heavily() : await lightly();
      const file = await asFile(reply, { endpoint, request, documents: heavy, act }, answer);
      return file ?? (typeof answer === "string" ? reply.type(jsonType).send(answer) : tagged(reply, answer));
    },
  });
}

/** An update says which version of the entry its caller saw. */
function seen({ effect }: Endpoint, request: FastifyRequest): { seenVersion?: number } {
  return effect === "updates" ? { seenVersion: seenVersion(request.headers["if-match"]) } : {};
}

/** Refuses `not-found` for a ward or record that is out of reach as for one that is not there. */
async function inReach(
  act: Act,
  { endpoint, input, reach }: { endpoint: Endpoint; input: Record<string, unknown>; reach: Reach },
): Promise<void> {
  const { wards } = endpoint;
  const id = Number(input[namedBy(wards) ?? ""]);
  if (wards === "ward") await findWard(act, id, reach);
  else if (wards === "import") await findImport(act, id);
  else if (wards !== "none" && wards !== "facility") await findRecord(act, { kind: wards, id }, reach);
}

/** An answer about one entry carries the entry's version as its tag. */
function tagged<T extends object>(reply: FastifyReply, answer: T): T {
  const { version } = answer as { version?: unknown };
  if (typeof version === "number") reply.header("etag", `"${version}"`);
  return answer;
}

function permittedReach(actor: Actor, { permission }: Endpoint): Reach {
  const does = permissions[permission].toLowerCase();
  return reachOf(actor, permission) ?? refuse("not-permitted", `None of your roles may do this: ${does}.`);
}
