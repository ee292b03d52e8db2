import { afterAll, beforeAll, expect, it } from "vitest";
import { firstActor } from "../../src/usecases/settings/find-facility.ts";
import { lookedAt } from "../http/alder-bay.ts";
import { importFiles } from "../usecases/imports/files.ts";
import { pictureOf, type Served, serveAlderBay } from "./browser.ts";

let served: Served;

beforeAll(async () => {
  served = await serveAlderBay();
}, 180_000);

afterAll(() => served?.close());

it("a rejected line blocks its month, opens at its line, and prints its reason once it is dropped", async () => {
  const files = {
    "moves.csv": [
      ...["stay,patient,ward,from,to", "W-1,WP-1,3E,2026-11-10T08:00,2026-11-12T08:00"],
      ...["W-2,WP-2,3E,2026-11-10T08:00,2026-11-09T08:00", "W-3,WP-3,4N,2026-11-10T08:00,never"],
    ],
    "signs.csv": ["stay,day,sign,present,value", "W-1,2026-11-11,temperature,yes,hot"],
  };
  const { store, people } = served.hospital;
  const actor = await firstActor(store);
  if (actor === null) throw new Error("nobody is there to import");
  await importFiles({ store, now: lookedAt, actor: { ...actor, personId: people.prevention } }, files, {
    setAside: true,
  });
  const page = await served.tab();
  for (const width of [1280, 820, 320]) {
    await page.setViewportSize({ width, height: 900 });
    await page.goto("/months/2026-11");
    await page.getByText("2 lines of moves are rejected and held for repair").waitFor();
    await page.getByText("Show 2 lines").click();
    await page.screenshot({ path: pictureOf("month with rejected lines", width), fullPage: true });
  }
  await page.getByRole("link", { name: "moves.csv, line 4" }).click();
  const card = page.getByRole("article", { name: "moves.csv, line 4" });
  await card.waitFor();
  expect(await card.evaluate((element) => element === document.activeElement)).toBe(true);
  expect(await page.getByRole("article", { name: "moves.csv, line 3" }).count()).toBe(0);
  for (const width of [1280, 820, 320]) {
    await page.setViewportSize({ width, height: 900 });
    await page.screenshot({ path: pictureOf("import at a rejected line", width), fullPage: true });
  }
  await card.getByText("Repair moves.csv, line 4").click();
  await card.getByLabel("Why it is dropped").fill("Test record of the sender");
  await card.getByRole("button", { name: "Drop this line" }).click();
  await page.getByText("moves.csv, line 4 was dropped.").waitFor();
  await page.goto("/months/2026-11");
  await page.getByText("1 rejected line was dropped and is in no figure.").waitFor();
  await page.getByText("Show 1 line").last().click();
  await page.getByText("Test record of the sender").waitFor();
}, 120_000);
