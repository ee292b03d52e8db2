import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { fillRound } from "../http/full-round.ts";
import { type Served, serveAlderBay } from "./browser.ts";

let served: Served;
beforeAll(async () => {
  served = await serveAlderBay();
  await fillRound(served.desk);
}, 180_000);
afterAll(() => served?.close());

const scripts = (loaded: readonly { name: string; bytes: number }[]) =>
  loaded.filter(({ name }) => name.endsWith(".js"));

/** What came over the wire for the round, by the end of each address, in bytes as they were sent. */
async function loadOfRound(): Promise<{ name: string; bytes: number }[]> {
  const page = await served.tab({ person: "bedside" });
  await page.goto(`/wards/${served.hospital.wards["3E"]}/round`);
  await page.getByText("BED-10").first().waitFor();
  return page.evaluate(() => {
    const entries = [...performance.getEntriesByType("navigation"), ...performance.getEntriesByType("resource")];
    return (entries as PerformanceResourceTiming[]).map(({ name, encodedBodySize }) => ({
      name: new URL(name).pathname,
      bytes: encodedBodySize,
    }));
  });
}

describe("the first visit of the round", () => {
  it("loads at most 150 kB of JavaScript, and 220 kB in all, as they come over the wire", async () => {
    const loaded = await loadOfRound();
    const sum = (list: typeof loaded) => list.reduce((all, { bytes }) => all + bytes, 0);
    expect(scripts(loaded).every(({ bytes }) => bytes > 0)).toBe(true);
    expect(sum(scripts(loaded))).toBeLessThanOrEqual(150_000);
    expect(sum(loaded)).toBeLessThanOrEqual(220_000);
    // One file after another costs a slow network its delay each time.
    expect(scripts(loaded).map(({ name }) => name.replace(/-[\w-]{8}\.js$/, ""))).toEqual(
      expect.arrayContaining(["/assets/start", "/assets/main"]),
    );
    expect(scripts(loaded)).toHaveLength(2);
    const round = loaded.find(({ name }) => /^\/api\/.*\/round$/.test(name));
    expect(round?.bytes).toBeGreaterThan(0);
    expect(round?.bytes, "the answer comes compressed").toBeLessThanOrEqual(3_000);
  });

  it("asks the server for all that the round needs before the page itself is there", async () => {
    const page = await served.tab({ person: "bedside" });
    const asked: string[] = [];
    page.on("request", (request) => asked.push(new URL(request.url()).pathname));
    let release = (): void => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route("**/assets/main-*.js", async (route) => {
      await held;
      await route.continue();
    });
    const wardId = served.hospital.wards["3E"];
    const answered = page.waitForResponse(`**/wards/${wardId}/policy`);
    await page.goto(`/wards/${wardId}/round`, { waitUntil: "commit" });
    await answered;
    release();
    await page.getByText("BED-10").first().waitFor();
    const base = "/api/v1";
    const questions = ["/me", "/facility", "/wards", `/wards/${wardId}/round`, `/wards/${wardId}/policy`];
    for (const question of questions) {
      const times = asked.filter((path) => path === base + question).length;
      expect([question, times], "once, and not again when the page is there").toEqual([question, 1]);
    }
  });
});
