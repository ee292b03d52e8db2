import { createServer } from "node:net";

/**
 * A server at a free port that answers every start of a PostgreSQL session with one error, as a real one does that
 * asks for a password and gets a wrong one; or with `bytes` as they are. The test server lets everybody in, so it
 * cannot show this. Message format: PostgreSQL manual, chapter Frontend/Backend Protocol, ErrorResponse.
 */
export async function refusingServer(answer: { code: string; message: string } | { bytes: string }) {
  const server = createServer((socket) => {
    socket.on("error", () => undefined);
    socket.once("data", () => socket.end("bytes" in answer ? answer.bytes : errorResponse(answer)));
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("no port");
  return { port: address.port, close: () => new Promise((resolve) => server.close(resolve)) };
}

function errorResponse({ code, message }: { code: string; message: string }): Buffer {
  const fields = Buffer.from(`SFATAL\0VFATAL\0C${code}\0M${message}\0\0`);
  const head = Buffer.alloc(5);
  head.write("E");
  head.writeInt32BE(fields.length + 4, 1);
  return Buffer.concat([head, fields]);
}
