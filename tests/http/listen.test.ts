import { createServer } from "node:net";
import { describe, expect, it } from "vitest";
import { Problem } from "../../shared/problems.ts";
import { emptyApp } from "../../src/http/app.ts";
import { listenLocally } from "../../src/http/listen.ts";

describe("listenLocally", () => {
  it("listens on this machine's own address alone", async () => {
    const app = emptyApp({ clock: () => 0 });
    expect(await listenLocally(app, 0)).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
    expect(app.addresses()).toEqual([expect.objectContaining({ address: "127.0.0.1" })]);
    await app.close();
  });

  it("refuses a port that is taken by name", async () => {
    const other = createServer();
    await new Promise<void>((resolve) => other.listen(0, "127.0.0.1", resolve));
    const taken = other.address();
    if (taken === null || typeof taken === "string") throw new Error("no port");
    const app = emptyApp({ clock: () => 0 });
    const failure = await listenLocally(app, taken.port).catch((error: unknown) => error);
    expect(failure).toBeInstanceOf(Problem);
    expect((failure as Problem).code).toBe("port-in-use");
    await app.close();
    other.close();
  });
});
