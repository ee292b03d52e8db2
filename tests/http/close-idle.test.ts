import { once } from "node:events";
import { connect } from "node:net";
import { expect, it } from "vitest";
import { emptyApp } from "../../src/http/app.ts";

it("the app closes at once beside connections on which nothing was asked, and answers what is under way", async () => {
  const app = emptyApp({ clock: () => 0 });
  let finish = (): void => {};
  const held = new Promise<void>((resolve) => {
    finish = resolve;
  });
  app.get("/slow", async () => {
    await held;
    return "answered";
  });
  const address = await app.listen({ host: "127.0.0.1", port: 0 });
  const silent = connect(Number(new URL(address).port), "127.0.0.1");
  await once(silent, "connect");
  const kept = await fetch(`${address}/nothing`);
  await kept.arrayBuffer();
  const begun = once(app.server, "request");
  const slow = fetch(`${address}/slow`);
  await begun;

  const closing = app.close();
  const isEarly = await Promise.race([closing.then(() => false), once(silent, "close").then(() => true)]);
  expect(isEarly).toBe(true);
  finish();
  expect(await (await slow).text()).toBe("answered");
  await closing;
}, 10_000);
