import Fastify, { type FastifyInstance } from "fastify";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { compressAnswers } from "../../src/http/compress-answers.ts";

const rows = { rows: Array.from({ length: 200 }, (_, bed) => ({ bed, state: "due" })) };
let app: FastifyInstance;
beforeAll(() => {
  app = Fastify();
  compressAnswers(app);
  app.get("/rows", async () => rows);
  app.get("/few", async () => ({ rows: [] }));
  app.get("/refusal", async (_, reply) => reply.code(422).type("application/problem+json").send(rows));
});
afterAll(() => app.close());

const get = (url: string, accepted?: string) =>
  app.inject({ url, headers: accepted === undefined ? {} : { "accept-encoding": accepted } });

describe("answers of the API", () => {
  it.each([
    ["gzip, deflate, br", "br"],
    ["gzip", "gzip"],
  ])("are sent small to who accepts %s", async (accepted, encoding) => {
    const { headers, rawPayload } = await get("/rows", accepted);
    expect(headers).toMatchObject({ "content-encoding": encoding, vary: expect.stringMatching(/accept-encoding/i) });
    expect(rawPayload.length).toBeLessThan(JSON.stringify(rows).length / 5);
  });

  it.each([
    ["/rows", undefined],
    ["/rows", "identity"],
    ["/rows", "br;q=0, gzip;q=0"],
    ["/few", "br"],
    ["/refusal", "br"],
  ])("are sent as they are: %s to who accepts %s", async (url, accepted) => {
    const { headers, payload } = await get(url, accepted);
    expect(headers["content-encoding"]).toBeUndefined();
    expect(JSON.parse(payload)).toHaveProperty("rows");
  });
});
