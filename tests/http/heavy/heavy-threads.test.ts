import type { FastifyInstance } from "fastify";
import supertest from "supertest";
import { afterAll, beforeAll, expect, it } from "vitest";
import { ensureProgramBuilt, heavyProgram } from "../../../scripts/build-program.mjs";
import { endpoints } from "../../../shared/api/index.ts";
import type { Endpoint } from "../../../shared/endpoint.ts";
import type { ReportDocument } from "../../../shared/report-document.ts";
import { buildApp } from "../../../src/http/app.ts";
import { heavyThreads } from "../../../src/http/heavy/heavy-threads.ts";
import type { HeavyWork } from "../../../src/http/heavy/heavy-work.ts";
import { localPrincipal } from "../../../src/http/principal.ts";
import type { Store } from "../../../src/store/store.ts";
import { onEachDatabase, type TestDatabase } from "../../databases/databases.ts";
import { lookedAt } from "../alder-bay.ts";
import { type Door, openDoor } from "../door.ts";

const addresses = [
  "/api/v1/wards/now",
  "/api/v1/months/2026-11",
  "/api/v1/months/2026-11/figures",
  "/api/v1/months/2026-11/gaps",
  "/api/v1/months/2026-11/care",
  "/api/v1/cases?list=waiting",
];

onEachDatabase("heavy reads", (fresh) => {
  let database: TestDatabase;
  let here: Door;
  let beside: FastifyInstance;
  let heavy: HeavyWork;
  /** Snapshots that the main thread took. */
  let snapshots = 0;

  beforeAll(async () => {
    await ensureProgramBuilt();
    database = await fresh();
    here = await openDoor(database);
    heavy = heavyThreads(heavyProgram, { databaseUrl: database.url, browserPath: null, version: "1.2.3" });
    const { store } = here.hospital;
    const counting: Store = {
      ...store,
      read: (work) => {
        snapshots += 1;
        return store.read(work);
      },
    };
    const principalOf = localPrincipal({ store: counting, demo: true });
    beside = await buildApp({ store: counting, clock: () => lookedAt, principalOf, version: "1.2.3", heavy });
  });
  afterAll(async () => {
    await beside?.close();
    await heavy?.close();
    await here?.close();
  });

  const getBeside = (address: string) =>
    supertest(beside.server).get(address).set("x-demo-person", String(here.hospital.people.prevention));

  it.each(addresses)("%s is answered the same by its thread, and leaves the main thread", async (address) => {
    const expected = await here.get(address).expect(200);
    snapshots = 0;
    const found = await getBeside(address).expect(200);
    expect(found.body).toEqual(expected.body);
    expect(found.headers["content-type"]).toBe(expected.headers["content-type"]);
    // Who asks; what is answered was read elsewhere.
    expect(snapshots).toBe(1);
  });

  it("refuse as they do here", async () => {
    const expected = await here.get("/api/v1/months/2031-01/figures").expect(422);
    const found = await getBeside("/api/v1/months/2031-01/figures").expect(422);
    expect({ ...found.body, instance: "" }).toEqual({ ...expected.body, instance: "" });
  });

  it("write down who saw what, before they answer", async () => {
    const views = () => here.hospital.store.read(({ db }) => db.auditEntry.count({ where: { action: "view-cases" } }));
    const before = await views();
    await getBeside("/api/v1/cases?list=waiting").expect(200);
    expect(await views()).toBe(before + 1);
  });

  it("make files on a thread too", async () => {
    const document: ReportDocument = await documentOf(here);
    const bytes = await heavy.make(document, "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet");
    expect(Buffer.from(bytes).subarray(0, 2).toString()).toBe("PK");
  });

  it("are all those whose cost grows with the facility", () => {
    const names = Object.entries<Endpoint>(endpoints).flatMap(([name, { heavy: is }]) => (is ? [name] : []));
    const others = Object.entries<Endpoint>(endpoints).flatMap(([name, one]) =>
      one.heavy && one.effect !== "reads" ? [name] : [],
    );
    expect(others).toEqual([]);
    expect(names).toEqual(expect.arrayContaining(["readWardsNow", "readMonthFigures", "compareWards", "verifyAudit"]));
  });
});

async function documentOf(door: Door): Promise<ReportDocument> {
  const { body } = await door.get("/api/v1/months/2026-11/document").expect(200);
  return body.document;
}
