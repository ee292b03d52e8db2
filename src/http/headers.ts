import helmet from "@fastify/helmet";
import type { FastifyInstance } from "fastify";

/**
 * The headers of every reply: the page may load and call nothing but this server, nobody may put it into a frame, no
 * reply is kept unless it says so itself, and each has the number of its request.
 */
export async function setHeaders(app: FastifyInstance): Promise<void> {
  const own = ["'self'"];
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: own,
        styleSrc: own,
        // The page of the API draws its arrows from data addresses.
        imgSrc: [...own, "data:"],
        connectSrc: own,
        fontSrc: own,
        formAction: own,
        baseUri: ["'none'"],
        frameAncestors: ["'none'"],
      },
    },
    // Encryption ends at the proxy of the installation, which answers for this header.
    strictTransportSecurity: false,
    frameguard: { action: "deny" },
    referrerPolicy: { policy: "no-referrer" },
  });
  app.addHook("onRequest", async (request, reply) => {
    reply.header("x-request-id", request.id);
  });
  app.addHook("onSend", async (_request, reply) => {
    if (!reply.hasHeader("cache-control")) reply.header("cache-control", "no-store");
  });
}
