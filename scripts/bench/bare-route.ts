/** A Fastify route that answers with bytes from a file, and nothing else: the least that answering over HTTP costs. */
import { readFileSync } from "node:fs";
import Fastify from "fastify";

const bytes = readFileSync(process.argv[2] ?? "");
const app = Fastify();
app.get("/", (_request, reply) => reply.type("application/json").send(bytes));
process.stdout.write(`${await app.listen({ host: "127.0.0.1", port: 0 })}\n`);
