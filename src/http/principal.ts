import type { FastifyRequest } from "fastify";
import { refuse } from "../../shared/problems.ts";
import type { Actor, Store } from "../usecases/act.ts";
import { firstActor } from "../usecases/settings/find-facility.ts";
import { findPerson } from "../usecases/settings/find-person.ts";
import type { PrincipalOf } from "./mount.ts";

/** In demo mode, the number of the person who is played. */
const demoHeader = "x-demo-person";

/**
 * Who acts while nobody can sign in: whoever sits at this machine acts as the first person of the installation, or in
 * demo mode as the one whose number the header `x-demo-person` gives.
 * Refuses `not-signed-in` for any other machine, and for a page of another site that lets its name point here.
 */
export function localPrincipal({ store, demo }: { store: Store; demo: boolean }): PrincipalOf {
  return async (request) => {
    if (!isLocal(request)) refuse("not-signed-in", "Until people can sign in, only this machine itself is answered.");
    const played = request.headers[demoHeader];
    const actor = demo && played !== undefined ? await playedPerson(store, played) : await firstActor(store);
    return actor ?? refuse("not-signed-in", "There is no such person here.");
  };
}

function playedPerson(store: Store, number: string | string[]): Promise<Actor | null> {
  const isNumber = typeof number === "string" && /^[1-9]\d{0,8}$/.test(number);
  return isNumber ? findPerson(store, Number(number)) : Promise.resolve(null);
}

/** From this machine, and asked for by an address of this machine. */
function isLocal(request: FastifyRequest): boolean {
  const remote = (request.socket.remoteAddress ?? "").replace(/^::ffff:/, "");
  return isLoopback(remote) && isLoopback(request.hostname.replace(/^\[|\]$/g, ""));
}

function isLoopback(host: string): boolean {
  return host === "localhost" || host === "::1" || /^127(\.\d{1,3}){3}$/.test(host);
}
