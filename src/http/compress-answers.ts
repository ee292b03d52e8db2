import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";
import { negotiate } from "@fastify/accept-negotiator";
import type { FastifyInstance } from "fastify";

/** Brotli's levels go to 11; at this one a round of forty takes a millisecond and a tenth of its bytes are left. */
const brotli = { params: { [constants.BROTLI_PARAM_QUALITY]: 4 } };

/** What is shorter fits into one packet whatever is done to it. */
const worthwhile = 1024;

/**
 * Sends answers of the API compressed to whoever can read that, done beside the event loop. Refusals stay as they are: they
 * repeat what was asked, and the length of what is compressed together with a stranger's words can betray what stands
 * beside them. (That is why no plugin does it: those compress whatever is text.)
 */
export function compressAnswers(app: FastifyInstance): void {
  app.addHook("onSend", async (request, reply, payload) => {
    const isAnswer = /^application\/json\b/.test(String(reply.getHeader("content-type")));
    if (!isAnswer || typeof payload !== "string" || Buffer.byteLength(payload) < worthwhile) return payload;
    const { vary } = reply.getHeaders();
    reply.header("vary", vary === undefined ? "accept-encoding" : `${vary}, accept-encoding`);
    const accepted = request.headers["accept-encoding"];
    const encoding = accepted === undefined ? null : negotiate(accepted, ["br", "gzip"]);
    if (encoding === null) return payload;
    const bytes = encoding === "br" ? await promisify(brotliCompress)(payload, brotli) : await promisify(gzip)(payload);
    reply.header("content-encoding", encoding).header("content-length", bytes.length);
    return bytes;
  });
}
