import type { FastifyInstance } from "fastify";
import { call } from "../../shared/call.ts";
import type { Endpoint, InputOf, OutputOf } from "../../shared/endpoint.ts";
import { AnsweredProblem } from "../../shared/problem-document.ts";
import { buildApp } from "../../src/http/app.ts";
import { localPrincipal } from "../../src/http/principal.ts";
import { openStore } from "../../src/store/open-store.ts";
import type { DatabaseKind, Store } from "../../src/store/store.ts";
import type { TestDatabase } from "../databases/databases.ts";
import { type AlderBay, fillAlderBay, lookedAt } from "../http/alder-bay.ts";

/** Each program on PostgreSQL has a store of its own; SQLite has one process, which all clients ask. */
const programs: Readonly<Record<DatabaseKind, number>> = { sqlite: 1, postgresql: 2 };

/** Alder Bay Hospital behind as many doors as its database takes. */
export interface Doors {
  readonly hospital: AlderBay;
  readonly store: Store;
  /** The address of a door; clients take turns. */
  base(client: number): string;
  /** Asks as a person; a refusal is answered, anything else thrown. */
  ask<E extends Endpoint>(endpoint: E, input: InputOf<E>, by: Asking): Promise<Answer<E>>;
  close(): Promise<void>;
}

export interface Asking {
  readonly client: number;
  readonly key?: string;
  readonly person?: keyof AlderBay["people"];
}

/** What came of a call: an answer, or the code with which it was refused. */
export type Answer<E extends Pick<Endpoint, "output">> =
  | { readonly done: OutputOf<E>; readonly refused: null }
  | { readonly done: null; readonly refused: string };

/** Fills a fresh database and listens. */
export async function openDoors(database: TestDatabase): Promise<Doors> {
  const hospital = await fillAlderBay(database.url);
  const stores = [hospital.store];
  while (stores.length < programs[database.kind]) stores.push(openStore(database.url));
  const apps: FastifyInstance[] = [];
  const bases: string[] = [];
  for (const store of stores) {
    const principalOf = localPrincipal({ store, demo: true });
    const app = await buildApp({ store, clock: () => lookedAt, principalOf, version: "1.2.3" });
    bases.push(await app.listen({ host: "127.0.0.1", port: 0 }));
    apps.push(app);
  }
  const base = (client: number) => bases[client % bases.length] ?? "";
  return {
    hospital,
    store: hospital.store,
    base,
    ask: async (endpoint, input, { client, key, person = "prevention" }) => {
      const headers = { "x-demo-person": String(hospital.people[person]) };
      try {
        const options = { base: base(client), headers, ...(key === undefined ? {} : { key }) };
        return { done: await call(endpoint, input, options), refused: null };
      } catch (error) {
        if (error instanceof AnsweredProblem && error.document.status < 500)
          return { done: null, refused: error.document.code };
        throw error;
      }
    },
    close: async () => {
      for (const app of apps) await app.close();
      for (const store of stores) await store.close();
      await database.drop();
    },
  };
}
