import type { FastifyInstance } from "fastify";
import { refuse } from "../../shared/problems.ts";

/**
 * Listens on this machine's own address; port 0 takes any free one. Resolves to the address, `http://127.0.0.1:8460`.
 * Refuses `port-in-use`.
 */
export async function listenLocally(app: FastifyInstance, port: number): Promise<string> {
  try {
    return await app.listen({ host: "127.0.0.1", port, listenTextResolver: () => "listening" });
  } catch (error) {
    if (!(error instanceof Error) || !("code" in error) || error.code !== "EADDRINUSE") throw error;
    return refuse("port-in-use", `Something else listens on port ${port} of this machine.`);
  }
}
