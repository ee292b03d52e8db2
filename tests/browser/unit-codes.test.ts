import { mkdirSync } from "node:fs";
import { dirname } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { month } from "../../shared/day.ts";
import { readSentFiles } from "../../src/csv/sent-files.ts";
import { workOnImports } from "../../src/usecases/imports/work-on-imports.ts";
import { lookedAt } from "../http/alder-bay.ts";
import { axeFindings } from "./axe.ts";
import { pictureOf, type Served, serveAlderBay } from "./browser.ts";

const { decideImport, findPatients, listWards, readMonth, receiveImport } = endpoints;
let served: Served;

beforeAll(async () => {
  served = await serveAlderBay();
}, 180_000);

afterAll(() => served?.close());

const work = () => workOnImports({ store: served.hospital.store, now: lookedAt, readFiles: readSentFiles });
const header = "stay,patient,ward,from,to";

async function send(line: string): Promise<number> {
  const files = [{ name: "moves.csv", text: `${header}\n${line}\n` }];
  const { importId } = await served.desk.ask(receiveImport, { files });
  await work();
  return importId;
}

/** Keeps pictures of the page in three widths, and says what axe finds. */
async function seen(page: Page, name: string): Promise<unknown> {
  for (const width of [1280, 820, 320]) {
    await page.setViewportSize({ width, height: 900 });
    const path = pictureOf(name, width);
    mkdirSync(dirname(path), { recursive: true });
    await page.screenshot({ path, fullPage: true });
  }
  return axeFindings(page);
}

it("a code similar to a unit's is asked about, answered once, listed as an alias, and asked about again without it", async () => {
  const page = await served.tab();
  const importId = await send("U-1,UP-1,3-E,2026-11-10T08:00,2026-11-12T08:00");
  await page.goto(`/imports/${importId}`);
  await page.getByRole("heading", { name: "Unknown unit codes" }).waitFor();
  await page.getByRole("button", { name: "Store the lines" }).click();
  await page.getByRole("alert").getByText(/3-E/).first().waitFor();
  expect(await seen(page, "import, unit asked")).toEqual([]);
  await page.getByRole("group", { name: "Unit 3-E" }).getByLabel("The same as 3E").check();
  await page.getByRole("button", { name: "Store the lines" }).click();
  await page.getByText("Waits for", { exact: false }).first().waitFor({ state: "detached" });
  await work();
  await page.reload();
  await page.getByText("Stored. The months count these lines now.").waitFor();
  const { wards } = await served.desk.ask(listWards, {});
  expect(wards.map(({ code }) => code)).not.toContain("3-E");
  await page.goto("/settings/sources");
  await page.getByText("1 unit alias").click();
  await page.getByText("3-E means 3E").waitFor();
  expect(await seen(page, "sources, alias")).toEqual([]);
  await page.getByLabel("Reason").last().fill("Another building");
  await page.getByRole("button", { name: "Remove this alias" }).click();
  await page.getByText("The change is recorded.").waitFor();
  expect(await page.getByText("3-E means 3E").count()).toBe(0);
  await page.goto(`/imports/${await send("U-2,UP-2,3-E,2026-11-10T08:00,2026-11-12T08:00")}`);
  await page.getByRole("group", { name: "Unit 3-E" }).waitFor();
}, 120_000);

it("a unit made by a misspelling is merged into the right one, which then has its days", async () => {
  const daysOf3E = async () =>
    (await served.desk.ask(readMonth, { month: month.parse("2026-11") })).sheet.rows.find(
      ([code]) => code === "3E",
    )?.[2];
  const before = Number(await daysOf3E());
  const importId = await send("U-3,UP-3,3 East,2026-11-10T08:00,2026-11-12T08:00");
  await served.desk.ask(decideImport, { importId, decision: "apply", setAside: false });
  await work();
  const wrong = (await served.desk.ask(listWards, {})).wards.find(({ code }) => code === "3 East");
  const page = await served.tab();
  await page.goto(`/settings/wards/${wrong?.wardId}`);
  await page.getByText("Merge this unit, or mark it as entered in error").click();
  expect(await seen(page, "ward, merge")).toEqual([]);
  const error = page.getByRole("region", { name: "Mark as entered in error" });
  await error.getByLabel("Reason").fill("Misspelled");
  await error.getByRole("button").click();
  await error
    .getByRole("alert")
    .getByText(/The unit has entries|Merge the unit/)
    .first()
    .waitFor();
  const merging = page.getByRole("region", { name: "Merge into another unit" });
  await merging.getByRole("combobox", { name: "Unit" }).selectOption({ label: "3E Ward 3E" });
  await merging.getByLabel("Reason").fill("Misspelled in the file");
  await merging.getByRole("button").click();
  await page.getByRole("heading", { name: "Units merged into this one" }).waitFor();
  expect(await seen(page, "ward, merged")).toEqual([]);
  expect(Number(await daysOf3E())).toBe(before + 2);
}, 120_000);

it("a patient's page names the days on which no unit is recorded", async () => {
  await served.desk.ask(decideImport, {
    ...{ importId: await send("U-4,UP-4,3E,2026-11-10T08:00,2026-11-11T08:00"), decision: "apply", setAside: false },
  });
  await work();
  await served.desk.ask(decideImport, {
    ...{ importId: await send("U-4,UP-4,3E,2026-11-14T08:00,2026-11-15T08:00"), decision: "apply", setAside: false },
  });
  await work();
  const { patients } = await served.desk.ask(findPatients, { identifier: "UP-4" });
  const page = await served.tab();
  await page.goto(`/patients/${patients[0]?.patientId}`);
  await page.getByText("Patient-days to resolve").waitFor();
  await page.getByText(/on no unit at the census, and no reason is recorded \(3 patient-days\)/).waitFor();
  expect(await seen(page, "record, days to resolve")).toEqual([]);
  await page.goto("/months/2026-11");
  await page
    .getByText(/3 patient-days may be missing/)
    .first()
    .waitFor();
  expect(await seen(page, "month, days to resolve")).toEqual([]);

  await page.goto(`/patients/${patients[0]?.patientId}`);
  await page.getByText("Add the missing move", { exact: true }).click();
  const missing = page.locator("details", { hasText: "Add the missing move" });
  expect(await missing.getByLabel("Moved at").inputValue()).toBe("2026-11-11T08:00");
  await missing.getByLabel("To", { exact: true }).selectOption({ label: "3E Ward 3E" });
  expect(await seen(page, "record, missing move")).toEqual([]);
  await missing.getByRole("button", { name: "Record the move" }).click();
  await page.getByText("Patient-days to resolve").waitFor({ state: "detached" });
  await page.goto("/months/2026-11");
  await page.getByRole("heading", { name: "To resolve before signing" }).waitFor();
  expect(await page.getByText(/3 patient-days may be missing/).count()).toBe(0);
}, 120_000);
