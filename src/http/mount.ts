import type { FastifyInstance, FastifyRequest } from "fastify";
import { apiBase } from "../../shared/api/index.ts";
import type { Endpoint, InputOf } from "../../shared/endpoint.ts";
import { permissions } from "../../shared/permissions.ts";
import { refuse } from "../../shared/problems.ts";
import type { Act, Actor, Store } from "../usecases/act.ts";
import { findWard } from "../usecases/find-ward.ts";
import { type Reach, reachOf } from "../usecases/reach.ts";
import { routeSchema } from "./openapi-route.ts";
import { readInput } from "./read-input.ts";
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

/** The way of every request: who asks, may they, what do they ask, of which ward; then the use case answers. */
export function mount<E extends Endpoint>(
  app: FastifyInstance,
  { name, endpoint, route }: { name: string; endpoint: E; route: Route<E> },
  { store, clock, principalOf }: MountOptions,
): void {
  app.route({
    method: endpoint.method,
    url: apiBase + endpoint.path.replaceAll(/\{(\w+)\}/g, ":$1"),
    schema: routeSchema(name, endpoint),
    handler: async (request) => {
      const act: Act = { store, actor: await principalOf(request), now: clock() };
      const reach = permittedReach(act.actor, endpoint);
      const input = readInput(endpoint, request);
      if (endpoint.wards === "ward") await findWard(act, Number(input.wardId), reach);
      // The cast is safe: the input was read by this very endpoint's schemas.
      return route(act, input as InputOf<E>, reach);
    },
  });
}

function permittedReach(actor: Actor, { permission }: Endpoint): Reach {
  const does = permissions[permission].toLowerCase();
  return reachOf(actor, permission) ?? refuse("not-permitted", `None of your roles may do this: ${does}.`);
}
