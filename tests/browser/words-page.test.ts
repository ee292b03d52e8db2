import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { fillCultures } from "../http/full-cultures.ts";
import { fillRound } from "../http/full-round.ts";
import { axeFindings } from "./axe.ts";
import { pictureOf, type Served, serveAlderBay } from "./browser.ts";

let served: Served;
let patientId: number;
beforeAll(async () => {
  served = await serveAlderBay();
  const beds = await fillRound(served.desk);
  patientId = beds[11].patientId;
  await fillCultures(served.desk, beds[10].patientId);
}, 180_000);
afterAll(() => served?.close());

async function take(page: Page, name: string, width: number): Promise<void> {
  await page.setViewportSize({ width, height: 900 });
  await page.screenshot({ path: pictureOf(name, width), fullPage: true });
}

it("a wording is chosen, applied to past specimens and exported; a table that contradicts it is refused", async () => {
  const page = await served.tab();
  await page.goto("/settings/words");
  await page.getByRole("heading", { name: "Wordings to choose" }).waitFor();
  expect(await axeFindings(page)).toEqual([]);
  for (const width of [1280, 820, 320]) await take(page, "words", width);
  expect(await page.getByText("One letter away from Escherichia coli").count()).toBe(1);
  const waiting = page.getByRole("listitem").filter({ hasText: "odd rod" });
  await waiting.getByLabel("Meaning of odd rod").selectOption("mixed-flora");
  await waiting.getByRole("button", { name: "Save choice" }).click();
  await page.getByText("The choice is saved.").waitFor();
  const row = page.getByRole("listitem").filter({ hasText: "odd rod" });
  await row.getByText("Past specimens", { exact: true }).click();
  await row.getByRole("button", { name: /Apply to past specimens/ }).click();
  await page.getByText("Applied to past specimens.").waitFor();
  const csv = await page.getByRole("link", { name: "Export as CSV" }).getAttribute("href");
  expect(decodeURIComponent(csv ?? "")).toContain("organism,odd rod,mixed-flora");
  await page.getByRole("textbox", { name: "Rows" }).fill("column,wording,choice\norganism,odd rod,bacterium");
  await page.getByRole("button", { name: "Import choices" }).click();
  await page.getByText("odd rod: The facility has another choice").first().waitFor();
  await take(page, "words, refused", 1280);
  await page.close();
}, 180_000);

it("a group that is chosen on a specimen is kept for its wording on demand", async () => {
  const page = await served.tab();
  await page.goto(`/patients/${patientId}/cultures`);
  await page.getByText("Record a specimen").click();
  await page.getByText("These organisms").click();
  await page.getByLabel("Name", { exact: true }).fill("Another odd rod");
  await page.getByLabel("Group", { exact: true }).selectOption("bacterium");
  await page.getByLabel(/Use this group for every specimen/).check();
  for (const width of [1280, 320]) await take(page, "specimen, group kept", width);
  await page.getByLabel("Collected at").fill("2026-11-20T08:00");
  await page.getByRole("button", { name: "Record the specimen" }).click();
  await page.getByText("The specimen was recorded.").waitFor();
  const entry = page.getByRole("article").filter({ hasText: "Another odd rod" });
  await entry.getByText("Change this entry").click();
  await entry.getByLabel("Name", { exact: true }).fill("A third odd rod");
  await entry.getByLabel("Group", { exact: true }).selectOption("bacterium");
  await entry.getByLabel(/Use this group for every specimen/).check();
  await entry.getByLabel("Why").first().fill("Read from the paper report.");
  await entry.getByRole("button", { name: "Record the correction" }).click();
  await page.getByText("A third odd rod").first().waitFor();
  await page.goto("/settings/words");
  await page.getByText("A third odd rod", { exact: false }).first().waitFor();
  const csv = await page.getByRole("link", { name: "Export as CSV" }).getAttribute("href");
  const rows = decodeURIComponent(csv ?? "").toLowerCase();
  expect(rows).toContain("organism,another odd rod,bacterium");
  expect(rows).toContain("organism,a third odd rod,bacterium");
  await page.close();
}, 180_000);
