import fastifyStatic from "@fastify/static";
import type { FastifyInstance, FastifyReply } from "fastify";

/** Hands out the files of the built page; returns what sends the page itself, whatever its address. */
export async function servePageFiles(
  app: FastifyInstance,
  folder: string,
): Promise<(reply: FastifyReply) => FastifyReply> {
  await app.register(fastifyStatic, {
    root: folder,
    prefix: "/",
    cacheControl: false,
    // Files lie beside their compressed twins; who cannot read those is sent the file itself.
    preCompressed: true,
    setHeaders: (reply, path) => {
      // Names in assets/ change with their content; everything else is asked for anew.
      const isNamedByContent = /[\\/]assets[\\/][^\\/]+-[\w-]{8}\.\w+(\.br|\.gz)?$/.test(path);
      reply.header("cache-control", isNamedByContent ? "public, max-age=31536000, immutable" : "no-cache");
    },
  });
  return (reply) => reply.code(200).sendFile("index.html");
}
