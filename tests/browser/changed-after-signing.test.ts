import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { day, month as monthText } from "../../shared/day.ts";
import { inputs } from "../http/inputs.ts";
import type { Subjects } from "../http/subjects.ts";
import { axeFindings } from "./axe.ts";
import { pictureOf, type Served, serveAlderBay } from "./browser.ts";

const { admitPatient, describeWard, dischargePatient, insertCatheter, readMonthFigures, removeCatheter, signMonth } =
  endpoints;
let served: Served;
let address: string;

/** Three patient-days and two catheter-days on 3E in October, which is signed. The patient is on the unit again. */
beforeAll(async () => {
  served = await serveAlderBay();
  const { desk, hospital } = served;
  const wardId = hospital.wards["3E"];
  const ward = { name: "Observation", type: null, setting: "outpatient", beds: null, reason: "Described" } as const;
  await desk.ask(describeWard, { ...ward, wardId: hospital.wards.OBS, fromDay: day.parse("2026-01-01") });
  const admission = { wardId, identifier: "OCT-1", number: "OCT-1", admittedAt: "2026-10-10T08:00" };
  const { stayId, patientId } = await desk.ask(admitPatient, admission);
  const insertion = inputs.insertCatheter({ stayId, at: "2026-10-10T09:00" } as Subjects);
  const { catheterId } = await desk.ask(insertCatheter, insertion);
  await desk.ask(removeCatheter, { catheterId, removedAt: "2026-10-12T09:00", seenVersion: 1 });
  await desk.ask(dischargePatient, { stayId, dischargedAt: "2026-10-13T10:00", seenVersion: 1 });
  await desk.ask(admitPatient, { ...admission, number: "OCT-1b", admittedAt: "2026-11-19T08:00" });
  const month = monthText.parse("2026-10");
  const { seen } = await desk.ask(readMonthFigures, { month });
  await desk.ask(signMonth, { month, seen, replaces: 0, reason: null });
  address = `/patients/${patientId}/catheters/${catheterId}`;
}, 180_000);

afterAll(() => served?.close());

it("shows the figures before and after, goes back with nothing lost, and records the change when it is right", async () => {
  const page = await served.tab();
  await page.goto(address);
  await page.getByText("Change the catheter itself").click();
  const form = page.getByRole("form", { name: "Correct it" }).last();
  await form.getByLabel("Removed at").fill("2026-10-11T09:00");
  await form.getByLabel("Why").fill("The chart says the 11th");
  await form.getByRole("button", { name: "Record the correction" }).click();
  const panel = page.getByRole("region", { name: "This changes October 2026, which is signed." });
  await panel.getByRole("row", { name: "3E Catheter-days 2 1" }).waitFor();
  await panel.getByText(/Signed by Ash Moreno on November 20, 2026/).waitFor();
  expect(await panel.evaluate((element) => element === document.activeElement)).toBe(true);
  expect(await axeFindings(page)).toEqual([]);
  for (const width of [1280, 820, 320]) {
    await page.setViewportSize({ width, height: 900 });
    await panel.screenshot({ path: pictureOf("change of a signed month", width) });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
  }
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await panel.waitFor({ state: "detached" });
  expect(await form.getByLabel("Why").inputValue()).toBe("The chart says the 11th");
  await page.waitForFunction(() => document.activeElement?.getAttribute("type") === "submit");
  await page.keyboard.press("Enter");
  await panel.getByRole("button", { name: "Record the change" }).click();
  await panel.waitFor({ state: "detached" });
  await page
    .getByText(/October 11|Oct 11/)
    .first()
    .waitFor();
}, 120_000);

it("stands on the home of infection prevention and at the top of the month, with the way to the entry", async () => {
  const page = await served.tab();
  await page.goto("/");
  const notice = page.getByRole("region", { name: "Changed after signing" });
  await notice.getByText("Units: 3E.").waitFor();
  expect(await axeFindings(page)).toEqual([]);
  for (const width of [1280, 820, 320]) {
    await page.setViewportSize({ width, height: 900 });
    await page.screenshot({ path: pictureOf("home with a month changed after signing", width), fullPage: true });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
  }
  await notice.getByRole("link", { name: "October 2026" }).click();
  const changes = page.getByRole("region", { name: "Changes after signing" });
  await changes.getByText("3E: Catheter-days 2 → 1").waitFor();
  await changes.getByText("Ash Moreno").waitFor();
  await changes.getByText(/^\d+ more figures$/).click();
  await changes.getByText("3E: Device utilization ratio 0.67 → 0.33").waitFor();
  expect(await axeFindings(page)).toEqual([]);
  for (const width of [1280, 820, 320]) {
    await page.setViewportSize({ width, height: 900 });
    await page.screenshot({ path: pictureOf("month with changes after signing", width), fullPage: true });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
  }
  await changes.getByRole("link", { name: "Corrected a catheter" }).click();
  await page.waitForURL(`**${address}`);
}, 120_000);

it("is no matter of the home of people of a unit", async () => {
  const page = await served.tab({ person: "bedside" });
  await page.goto("/");
  await page.getByText(/^As of/).waitFor();
  expect(await page.getByRole("region", { name: "Changed after signing" }).count()).toBe(0);
}, 60_000);
