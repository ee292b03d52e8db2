import { readFile } from "node:fs/promises";
import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { day, month } from "../../shared/day.ts";
import { axeFindings } from "./axe.ts";
import { pictureOf, type Served, serveAlderBay } from "./browser.ts";

let served: Served;

/** A CAUTI of 3E: fever and culture on the fourth day of a catheter. */
beforeAll(async () => {
  served = await serveAlderBay();
  const { desk, hospital } = served;
  const watch = { fromMonth: month.parse("2026-10"), toMonth: null, edition: "us-2024" } as const;
  await desk.ask(endpoints.watchWard, { wardId: hospital.wards["3E"], ...watch });
  const { patients } = await desk.ask(endpoints.findPatients, { identifier: "ALDER-1001" });
  const patientId = patients[0]?.patientId ?? 0;
  const organisms = [{ name: "Escherichia coli", count: ">100000" }];
  const culture = { method: "culture", status: "final", organisms } as const;
  await desk.ask(endpoints.recordSpecimen, {
    ...{ patientId, kind: "urine", collectedAt: "2026-11-05T08:00" },
    ...culture,
  });
  const fever = { sign: "temperature", finding: "present", temperature: "38.6" } as const;
  await desk.ask(endpoints.recordSigns, { patientId, day: day.parse("2026-11-05"), signs: [fever] });
}, 180_000);

afterAll(() => served?.close());

it("the infections of any days are chosen in the address, open to their case, and are taken away as rows", async () => {
  const page = await served.tab();
  await page.goto("/months/2026-11");
  await page.getByRole("link", { name: "Infections of other days" }).click();
  await page.getByText("1 infection, Sunday, November 1, 2026 to Monday, November 30, 2026.").waitFor();
  await page.getByLabel("Date of event from").fill("2026-10-20");
  await page.getByLabel("Date of event to").fill("2026-11-05");
  await page.getByRole("button", { name: "Show the infections" }).click();
  await page.getByText("1 infection, Tuesday, October 20, 2026 to Thursday, November 5, 2026.").waitFor();
  expect(new URL(page.url()).search).toBe("?first=2026-10-20&last=2026-11-05");
  const row = page.getByRole("row", { name: /ALDER-1001/ });
  expect(await row.innerText()).toMatch(/2026-11-05[\s\S]*3E[\s\S]*SUTI 1a[\s\S]*Escherichia coli/);
  expect(await axeFindings(page)).toEqual([]);
  for (const width of [1280, 820, 320]) {
    await page.setViewportSize({ width, height: 900 });
    await page.screenshot({ path: pictureOf("infections of some days", width), fullPage: true });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
  }
  // Nothing of the table is cut off on paper (A4 upright has 718 px between usual margins).
  await page.setViewportSize({ width: 718, height: 1000 });
  await page.emulateMedia({ media: "print" });
  const width = await page.evaluate(() => document.querySelector("table.ledger")?.scrollWidth);
  const room = await page.evaluate(() => document.documentElement.clientWidth);
  await page.screenshot({ path: pictureOf("infections printed", 718), fullPage: true });
  expect(width).toBeLessThanOrEqual(room);
  await page.emulateMedia({ media: "screen" });
  await page.setViewportSize({ width: 1280, height: 900 });
  const [file] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Infections as CSV" }).click(),
  ]);
  expect(file.suggestedFilename()).toBe("infections-2026-10-20-to-2026-11-05.csv");
  expect(await readFile(await file.path(), "utf8")).toMatch(/2026-11-05,3E,ALDER-1001/);
  await row.getByRole("link").click();
  await page.getByRole("heading", { name: "Step by step" }).waitFor();
}, 60_000);

it("days that cannot be read, lie ahead or are too many are told, and days without an infection say so", async () => {
  const page = await served.tab();
  const show = async (first: string, last: string): Promise<void> => {
    await page.goto("/infections");
    await page.getByLabel("Date of event from").fill(first);
    await page.getByLabel("Date of event to").fill(last);
    await page.getByRole("button", { name: "Show the infections" }).click();
  };
  await show("", "2026-11-05");
  await page.getByText("Give both days, as YYYY-MM-DD.").waitFor();
  await show("2026-11-05", "2026-11-01");
  await page.getByRole("alert").getByText("before").first().waitFor();
  await show("2020-01-01", "2026-11-01");
  await page.getByRole("alert").getByText("366 days").first().waitFor();
  await show("2026-10-01", "2026-10-31");
  await page
    .getByText(
      "No infection of your units has its date of event from Thursday, October 1, 2026 to Saturday, October 31, 2026.",
    )
    .waitFor();
}, 60_000);

it("who may not see patients reads events by which nobody can be known", async () => {
  const page = await served.tab({ person: "manager" });
  await page.goto("/infections?first=2026-11-01&last=2026-11-20");
  await page.getByText("1 infection, Sunday, November 1, 2026 to Friday, November 20, 2026.").waitFor();
  const row = page.getByRole("row", { name: /3E/ });
  expect(await row.innerText()).toMatch(/^2026-11\s+3E\s+not shown\s+SUTI 1a/);
  expect(await row.getByRole("link").count()).toBe(0);
  expect(await page.content()).not.toContain("ALDER-1001");
}, 60_000);
