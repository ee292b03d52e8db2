import { randomInt } from "node:crypto";
import type { FastifyInstance } from "fastify";
import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import type { Endpoint } from "../../shared/endpoint.ts";
import { problemDocument } from "../../shared/problem-document.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type Door, openDoor } from "../http/door.ts";
import { situationsIn } from "../http/situations.ts";
import { chanceOf } from "../ledger/chance.ts";
import { type Operation, operationsOf, randomRequest } from "./random-request.ts";
import type { Schema } from "./random-value.ts";

const requests = Number(process.env.REQUESTS ?? 10_000);
const firstSeed = Number(process.env.SEED ?? randomInt(1_000_000));
/** Requests that one draw of the generator serves. */
const batch = 100;

/** Codes that come from the door, before any use case is asked. */
const ofTheDoor =
  /^(request-|json-|media-|not-signed-in|not-permitted|address-|method-|field-|idempotency-key-(missing|unread)|version-)/;
/** What must never get out: stacks, SQL, files. */
const leaks = /\bat \S+ \(|node_modules|\.ts:\d|SELECT |INSERT INTO|UPDATE |prisma|\/tmp\/|SQLITE_|ECONN/i;

onEachDatabase(`random requests, SEED=${firstSeed} REQUESTS=${requests}`, (fresh) => {
  let door: Door;
  let operations: readonly Operation[];
  let shapes: Readonly<Record<string, Schema>>;
  /** Opens a hospital of its own. */
  const open = async () => {
    door = await openDoor(await fresh());
    const { hospital } = door;
    return { people: Object.values(hospital.people), situations: Object.values(await situationsIn(hospital)) };
  };
  let found: Awaited<ReturnType<typeof open>>;
  beforeAll(async () => {
    found = await open();
    const { body } = await door.get("/api/v1/openapi.json").expect(200);
    operations = operationsOf(body);
    shapes = body.components.schemas;
  });
  afterAll(() => door?.close());

  it(
    "meet no fault of the program, and nothing that is not described",
    async () => {
      let reached = 0;
      const statuses = new Map<number, number>();
      for (let done = 0; done < requests; done += batch) {
        const seed = firstSeed + done / batch;
        // A new hospital now and then: the requests themselves discharge and void what they find, and merge its units.
        if (done > 0 && done % 2000 === 0) {
          await door.close();
          found = await open();
        }
        const chance = chanceOf(seed, batch * 400);
        for (let i = 0; i < batch; i++) {
          const request = randomRequest({ chance, operations, shapes, ...found });
          const outcome = await send(door.app, request, `SEED=${seed}, request ${i}`);
          statuses.set(outcome.status, (statuses.get(outcome.status) ?? 0) + 1);
          if (outcome.reached) reached += 1;
        }
      }
      const told = [...statuses].sort(([a], [b]) => a - b).map(([status, count]) => `${count} × ${status}`);
      process.stdout.write(
        `SEED=${firstSeed}, ${requests} requests: ${told.join(", ")}; ${reached} reached a use case\n`,
      );
      expect(reached).toBeGreaterThan(requests / 2);
    },
    requests * 200,
  );
});

async function send(
  app: FastifyInstance,
  { operation, ...request }: ReturnType<typeof randomRequest>,
  where: string,
): Promise<{ status: number; reached: boolean }> {
  const began = performance.now();
  const response = await app.inject(request);
  const took = performance.now() - began;
  const story = `${where}: ${request.method} ${operation.path} answered ${response.statusCode} ${response.body.slice(0, 300)}`;
  expect(response.statusCode, story).toBeLessThan(500);
  expect(took, story).toBeLessThan(5000);
  expect(operation.statuses, story).toContain(String(response.statusCode));
  const body: unknown = response.json();
  if (response.statusCode === 200) {
    const endpoint = endpoints[operation.id as keyof typeof endpoints] as Endpoint;
    expect(endpoint.output.safeParse(body).success, story).toBe(true);
    return { status: 200, reached: true };
  }
  const problem = problemDocument.safeParse(body);
  expect(problem.success, story).toBe(true);
  expect(response.body, story).not.toMatch(leaks);
  return { status: response.statusCode, reached: !ofTheDoor.test(problem.data?.code ?? "") };
}
