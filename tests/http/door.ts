import type { FastifyBaseLogger, FastifyInstance } from "fastify";
import supertest from "supertest";
import { buildApp } from "../../src/http/app.ts";
import { localPrincipal } from "../../src/http/principal.ts";
import { watchSignedMonths } from "../../src/usecases/months/watch-signed-months.ts";
import type { TestDatabase } from "../databases/databases.ts";
import { type AlderBay, fillAlderBay, lookedAt } from "./alder-bay.ts";

/** Alder Bay Hospital behind the HTTP door. */
export interface Door {
  readonly app: FastifyInstance;
  readonly hospital: AlderBay;
  /** Asks as one of the hospital's people. */
  get(path: string, person?: keyof AlderBay["people"]): supertest.Test;
  close(): Promise<void>;
}

/** Opens the door of a fresh database. */
export async function openDoor(
  database: TestDatabase,
  { logger, staticFolder }: { logger?: FastifyBaseLogger; staticFolder?: string } = {},
): Promise<Door> {
  const hospital = await fillAlderBay(database.url);
  const { people } = hospital;
  // As the program opens it.
  const store = watchSignedMonths(hospital.store);
  const app = await buildApp({
    store,
    clock: () => lookedAt,
    principalOf: localPrincipal({ store, demo: true }),
    version: "1.2.3",
    ...(logger ? { logger } : {}),
    ...(staticFolder ? { staticFolder } : {}),
  });
  return {
    app,
    hospital,
    get: (path, person = "prevention") => supertest(app.server).get(path).set("x-demo-person", String(people[person])),
    close: async () => {
      await app.close();
      await store.close();
      await database.drop();
    },
  };
}
