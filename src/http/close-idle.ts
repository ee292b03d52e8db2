import type { Socket } from "node:net";
import type { FastifyInstance } from "fastify";

/**
 * Lets the app close at once when nobody waits for an answer. Browsers keep connections open on which they have not
 * asked anything yet; Node does not count these as idle, and would wait for them until its time limits.
 */
export function closeIdleOnClose(app: FastifyInstance): void {
  const open = new Set<Socket>();
  const busy = new Set<Socket>();
  app.server.on("connection", (socket) => {
    open.add(socket);
    socket.once("close", () => open.delete(socket));
  });
  app.server.on("request", ({ socket }, response) => {
    busy.add(socket);
    response.once("close", () => busy.delete(socket));
  });
  app.addHook("preClose", async () => {
    for (const socket of open) if (!busy.has(socket)) socket.destroy();
  });
}
