import { isUtf8 } from "node:buffer";
import type { FastifyInstance, FastifyRequest } from "fastify";
import { refuse } from "../../shared/problems.ts";
import { checkJsonTokens, refuseBrokenJson } from "./json-tokens.ts";

const lineFeed = 0x0a;

/**
 * Reads the JSON of a request strictly: UTF-8, one value, no name twice in an object, nothing nested deeper than is ever
 * meant, no number that would change when it is read, and no characters that no database can keep.
 * Refuses `request-unreadable`, `json-name-repeated`, `json-too-deep` and `json-value-unusable` by line and column, and
 * never repeats what was sent.
 */
export function readJson(bytes: Uint8Array): unknown {
  if (bytes.length === 0) refuse("request-unreadable", "The body is empty.");
  const text = decode(bytes);
  checkJsonTokens(text);
  try {
    return JSON.parse(text);
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    return refuseBrokenJson(text);
  }
}

function decode(bytes: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    return refuse("request-unreadable", `The body is not UTF-8, in line ${firstBrokenLine(bytes)}.`);
  }
}

/** A line break is one byte in UTF-8 and never part of another character, so lines can be looked at one by one. */
function firstBrokenLine(bytes: Uint8Array): number {
  let line = 1;
  let end = bytes.indexOf(lineFeed);
  for (let start = 0; end !== -1 && isUtf8(bytes.subarray(start, end)); line++) {
    start = end + 1;
    end = bytes.indexOf(lineFeed, start);
  }
  return line;
}

/**
 * Lets a door read JSON with {@link readJson} and nothing else. Another character set, or a body that is packed, is
 * refused: `media-type-unknown`.
 */
export function readJsonBodies(app: FastifyInstance): void {
  app.removeAllContentTypeParsers();
  app.addContentTypeParser(
    "application/json",
    { parseAs: "buffer" },
    async ({ headers }: FastifyRequest, bytes: Buffer) => {
      const [, charset = "utf-8"] = /;\s*charset\s*=\s*"?([^\s";]+)/i.exec(headers["content-type"] ?? "") ?? [];
      if (charset.toLowerCase() !== "utf-8") refuse("media-type-unknown", "Only JSON in UTF-8 is read here.");
      if ((headers["content-encoding"] ?? "identity").toLowerCase() !== "identity")
        refuse("media-type-unknown", "Only JSON that is not packed is read here.");
      return readJson(bytes);
    },
  );
}
