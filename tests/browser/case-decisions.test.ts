import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { day, month } from "../../shared/day.ts";
import { axeFindings } from "./axe.ts";
import { pictureOf, type Served, serveAlderBay } from "./browser.ts";

let served: Served;
let patientId = 0;
let specimenId = 0;

const grew = [{ name: "Escherichia coli", count: ">100000" }];

beforeAll(async () => {
  served = await serveAlderBay();
  const { desk, hospital } = served;
  for (const code of ["3E", "4N"] as const) {
    const watch = { fromMonth: month.parse("2026-10"), toMonth: null, edition: "us-2024" } as const;
    await desk.ask(endpoints.watchWard, { wardId: hospital.wards[code], ...watch });
  }
  const { patients } = await desk.ask(endpoints.findPatients, { identifier: "ALDER-1001" });
  patientId = patients[0]?.patientId ?? 0;
  const culture = { method: "culture", status: "final", organisms: grew } as const;
  const specimen = { patientId, kind: "urine", collectedAt: "2026-11-05T08:00", ...culture } as const;
  specimenId = (await desk.ask(endpoints.recordSpecimen, specimen)).specimenId;
  const fever = { sign: "temperature", finding: "present", temperature: "38.6" } as const;
  await desk.ask(endpoints.recordSigns, { patientId, day: day.parse("2026-11-05"), signs: [fever] });
}, 180_000);

afterAll(() => served?.close());

it("the cultures of one ward are chosen, kept in the address, and an empty choice says how many there are", async () => {
  const page = await served.tab();
  await page.goto("/cases");
  await page.getByRole("link", { name: "3E, urine of Thu, Nov 5" }).waitFor();
  await page.getByLabel("Unit", { exact: true }).selectOption("4N");
  await page.getByText("The only culture of this list does not fit what you chose.").waitFor();
  expect(new URL(page.url()).search).toContain(`ward=${served.hospital.wards["4N"]}`);
  await page.reload();
  await page.getByText("The only culture of this list does not fit what you chose.").waitFor();
  await page.getByLabel("Unit", { exact: true }).selectOption("All units");
  await page.getByRole("link", { name: "3E, urine of Thu, Nov 5" }).waitFor();
}, 60_000);

it("a disagreement needs a reason and is printed while the count follows; taken back, the culture waits again", async () => {
  const page = await served.tab();
  await page.goto(`/cases/${specimenId}`);
  await page.getByText("Record a disagreement", { exact: true }).click();
  const record = page.getByRole("button", { name: "Record the disagreement" });
  expect(await record.isDisabled()).toBe(true);
  await page.getByLabel("Why you disagree").fill("The fever came with the pneumonia");
  await record.click();
  await page.getByText(/^Disagreed Nov 20, 10:00 by Ash Moreno/).waitFor();
  await page.emulateMedia({ media: "print" });
  expect(await page.getByText("The fever came with the pneumonia").first().isVisible()).toBe(true);
  await page.emulateMedia({ media: "screen" });
  // Who disagrees overrules no rule: it is a CAUTI of 3E all the same.
  expect(await cautisOf("3E")).toBe(1);
  await page.getByText("Take the decision back").click();
  await page.getByLabel("Why", { exact: true }).fill("Decided on the wrong culture");
  await page.getByRole("button", { name: "Open it again" }).click();
  await page.getByRole("button", { name: "Confirm this determination" }).waitFor();
  await page.getByText("Decided on the wrong culture").first().waitFor();
  expect(await cautisOf("3E")).toBe(0);
}, 60_000);

/** The CAUTIs that November counts on a ward. */
async function cautisOf(code: "3E" | "4N"): Promise<number | undefined> {
  const { infections } = await served.desk.ask(endpoints.readMonth, { month: month.parse("2026-11") });
  return infections.find(({ wardId }) => wardId === served.hospital.wards[code])?.cautis;
}

it("a decision about what somebody changed meanwhile is refused, and made after reading it anew", async () => {
  const page = await served.tab();
  await page.goto(`/cases/${specimenId}`);
  const confirm = page.getByRole("button", { name: "Confirm this determination" });
  await confirm.waitFor();
  await served.desk.ask(endpoints.recordSigns, {
    patientId,
    day: day.parse("2026-11-04"),
    signs: [{ sign: "temperature", finding: "present", temperature: "38.9" }],
  });
  await confirm.click();
  await page.getByText("It changed while you were looking at it. Nothing was recorded.").waitFor();
  await page.getByRole("button", { name: "Read it again" }).click();
  await page.getByText("The date of event is 4 November 2026, the day of the first element that was used.").waitFor();
  await confirm.click();
  await page.getByText(/^Confirmed Nov 20, 10:00 by Ash Moreno/).waitFor();
}, 60_000);

it("a specimen that stands in two tabs is not overwritten: both reports stand beside each other", async () => {
  const tabs = [await served.tab(), await served.tab()] as const;
  for (const [i, page] of tabs.entries()) {
    await page.goto(`/patients/${patientId}/cultures`);
    const entry = page.locator(`#specimen-${specimenId}`);
    await entry.getByText("Change this entry").click();
    const form = entry.getByRole("form", { name: "Correct it, or record a further report" });
    await form.getByLabel("How much grew").fill(i === 0 ? "50000" : "75000");
    await form.getByLabel("Why", { exact: true }).fill(i === 0 ? "The laboratory corrected it" : "Read by telephone");
  }
  const [first, second] = tabs;
  await first.getByRole("button", { name: "Record the correction" }).click();
  await first.getByText("50000").first().waitFor();
  await second.getByRole("button", { name: "Record the correction" }).click();
  await second.getByText("Another person changed this entry since you opened it").waitFor();
  await second.getByRole("region", { name: "What is there now" }).getByText("50000").waitFor();
  await second.getByRole("region", { name: "What you are about to record" }).getByText("75000").waitFor();
  expect(await axeFindings(second)).toEqual([]);
  for (const width of [1280, 820, 320]) {
    await second.setViewportSize({ width, height: 900 });
    await second.screenshot({ path: pictureOf("specimen in two tabs", width), fullPage: true });
    expect(await second.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
  }
  await second.getByRole("button", { name: "Record mine all the same" }).click();
  await second.getByText("75000").first().waitFor();
  await second.getByText(/Read by telephone/).waitFor();
  const { specimens } = await served.desk.ask(endpoints.readCultures, { patientId });
  expect(specimens.map(({ organisms, version }) => [organisms[0]?.count, version])).toEqual([["75000", 3]]);
}, 60_000);

it("that a watched ward had no event is confirmed once the month is over, and withdrawn with a reason", async () => {
  const page = await served.tab();
  await page.goto("/months/2026-11");
  const rows = (code: string) => page.locator("table.infections tbody tr").filter({ hasText: code });
  await rows("4N").getByText("once the month is over").waitFor();
  await page.goto("/months/2026-10");
  await page.getByRole("button", { name: "Confirm no infection identified on 4N" }).click();
  await rows("4N").getByText("confirmed Nov 20, 10:00").waitFor();
  // The other ward's stands for itself.
  await page.getByRole("button", { name: "Confirm no infection identified on 3E" }).waitFor();
  await rows("4N").getByText("Withdraw it").first().click();
  const form = page.getByRole("form", { name: "Withdraw it" });
  await form.getByLabel("Why").fill("Two results were missing");
  await form.getByRole("button", { name: "Mark the entry as entered in error" }).click();
  await page.getByRole("button", { name: "Confirm no infection identified on 4N" }).waitFor();
  const manager = await served.tab({ person: "manager" });
  await manager.goto("/months/2026-10");
  await manager.getByText("not confirmed yet").first().waitFor();
  expect(await manager.getByRole("button", { name: /Confirm no infection identified/ }).count()).toBe(0);
}, 60_000);
