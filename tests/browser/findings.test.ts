import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { axeFindings } from "./axe.ts";
import { pictureOf, type Served, serveAlderBay } from "./browser.ts";

let served: Served;
let patientId = 0;

beforeAll(async () => {
  served = await serveAlderBay();
  const { patients } = await served.desk.ask(endpoints.findPatients, { identifier: "ALDER-1001" });
  patientId = patients[0]?.patientId ?? 0;
}, 180_000);

afterAll(() => served?.close());

it("a finding beside the cultures is recorded, corrected and voided, with what is wrong at its field", async () => {
  const page = await served.tab({ person: "bedside" });
  await page.goto(`/patients/${patientId}/cultures`);
  await page.getByText("Nothing else was recorded").waitFor();
  await page.getByText("Record another finding").click();
  const record = page.getByRole("button", { name: "Record this finding" });
  expect(await record.isDisabled()).toBe(true);
  await page.getByLabel("What", { exact: true }).selectOption("pyuria");
  const fields = page.locator("details", { hasText: "Record another finding" });
  await fields.getByLabel("Day", { exact: true }).fill("2026-11-05");
  // Fewer than ten cells are no pyuria: the number says the opposite of what was chosen.
  await fields.getByLabel("White blood cells per mm³").fill("4");
  await record.click();
  await fields.getByText("10 or more per mm³ are found; fewer are not.").first().waitFor();
  await fields.getByLabel("White blood cells per mm³").fill("25");
  await record.click();
  await page.getByText("The finding was recorded.").waitFor();
  const entry = page.getByRole("article").filter({ hasText: "on Thu, Nov 5" });
  await entry.getByText("25 per mm³").waitFor();
  await entry.getByText("Change this entry").click();
  const correct = entry.getByRole("form", { name: "Correct it" });
  await correct.getByText("Looked for, and not so").click();
  await correct.getByLabel("White blood cells per mm³").fill("6");
  await correct.getByLabel("Why").fill("Read from another line");
  await correct.getByRole("button", { name: "Record the correction" }).click();
  await entry.getByText("6 per mm³").waitFor();
  await entry.getByText(/Read from another line/).click();
  await entry.getByText("25", { exact: true }).waitFor();
  expect(await axeFindings(page)).toEqual([]);
  for (const width of [1280, 820, 320]) {
    await page.setViewportSize({ width, height: 900 });
    await page.screenshot({ path: pictureOf("cultures with a finding", width), fullPage: true });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
  }
  await entry.getByText("Change this entry").click();
  const away = entry.getByRole("form", { name: /Mark as entered in error/ });
  await away.getByLabel("Why").fill("Another patient's urine");
  await away.getByRole("button", { name: "Mark the entry as entered in error" }).click();
  await entry.getByText("Entered in error: Another patient's urine").waitFor();
  const { findings } = await served.desk.ask(endpoints.readCultures, { patientId });
  expect(
    findings.map(({ finding, present, cellsPerMm3, voidReason }) => [finding, present, cellsPerMm3, voidReason]),
  ).toEqual([["pyuria", false, 6, "Another patient's urine"]]);
}, 60_000);
