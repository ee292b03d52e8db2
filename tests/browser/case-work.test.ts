import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { day, month } from "../../shared/day.ts";
import { type Served, serveAlderBay } from "./browser.ts";

let served: Served;
let patientId = 0;

beforeAll(async () => {
  served = await serveAlderBay();
  const { patients } = await served.desk.ask(endpoints.findPatients, { identifier: "ALDER-1001" });
  patientId = patients[0]?.patientId ?? 0;
  // A culture is work where an infection could belong to a unit under surveillance.
  const surveillance = { fromMonth: month.parse("2026-11"), toMonth: null, edition: "us-2024" } as const;
  await served.desk.ask(endpoints.watchWard, { wardId: served.hospital.wards["3E"], ...surveillance });
}, 180_000);

afterAll(() => served?.close());

/** Records the culture and the fever of a patient who had a catheter from 2 to 5 November, as the laboratory reports them. */
async function recordFacts(page: Page): Promise<void> {
  await page.goto(`/patients/${patientId}`);
  await page.getByRole("link", { name: "Cultures and signs" }).click();
  await page.getByText("Record a specimen").click();
  const record = page.getByRole("button", { name: "Record the specimen" });
  await page.getByLabel("Collected at").fill("2026-11-05T08:00");
  // Whether anything grew has to be said; an empty list is not taken as no growth.
  expect(await record.isDisabled()).toBe(true);
  await page.getByText("These organisms").click();
  await page.getByLabel("Name", { exact: true }).fill("Rare new thing");
  await page.getByLabel("Group").waitFor();
  await page.getByLabel("Name", { exact: true }).fill("E. coli");
  await expect.poll(() => page.getByLabel("Group").count()).toBe(0);
  await page.getByLabel("Name", { exact: true }).fill("Escherichia coli");
  // The name is on the list, so its group is not asked for.
  await expect.poll(() => page.getByLabel("Group").count()).toBe(0);
  await page.getByLabel("How much grew").fill(">100000");
  await record.click();
  await page.getByText("The specimen was recorded.").waitFor();
  await page.getByText("Record signs of a day").click();
  await page.getByLabel("Day", { exact: true }).fill("2026-11-05");
  await page.getByRole("group", { name: "Temperature" }).getByText("Temperature", { exact: true }).last().click();
  await page.getByLabel("Temperature", { exact: true }).last().fill("58.6");
  await page.getByRole("button", { name: "Record these signs" }).click();
  await page.getByRole("alert").waitFor();
  await page.getByLabel("Temperature", { exact: true }).last().fill("38.6");
  await page.getByRole("button", { name: "Record these signs" }).click();
  await page.getByText("1 sign was recorded.").waitFor();
}

it("a culture that is recorded waits, is understood day by day, and is confirmed; a changed fact brings it back", async () => {
  const page = await served.tab();
  await recordFacts(page);
  await page.getByRole("navigation").getByRole("link", { name: "Cultures", exact: true }).click();
  await page.getByRole("link", { name: "3E, urine of Thu, Nov 5" }).click();
  await page.getByRole("heading", { name: "Step by step" }).waitFor();
  await page.getByText("A surveillance determination is not a diagnosis and must not guide treatment.").waitFor();
  // Catheter day 4 of a catheter of 2 November, with fever on the day of the culture: the date of event is 5 November.
  await page.getByText("The date of event is 5 November 2026, the day of the first element that was used.").waitFor();
  await throughThePicture(page);
  await page.getByRole("button", { name: "Confirm this determination" }).click();
  await page.getByText(/^Confirmed Nov 20, 10:00 by Ash Moreno/).waitFor();
  await page.getByText("Take the decision back").waitFor();
  await voidTheFever(page);
  await page.goto("/cases?changed=yes");
  await page.getByText("Changed since confirmed").first().waitFor();
  await page.getByRole("link", { name: "3E, urine of Thu, Nov 5" }).click();
  await page.getByText("Marked a sign as entered in error").first().waitFor();
  await page.getByText("Reason given: Read off the wrong chart").waitFor();
}, 60_000);

/** The marks of the picture by the arrow keys; each is said, and the same stands in a table. */
async function throughThePicture(page: Page): Promise<void> {
  await page.getByRole("link", { name: "Skip the picture" }).focus();
  await page.keyboard.press("Tab");
  await page.locator(".chart-live").getByText("Date of event: Thu, Nov 5").waitFor();
  await page.keyboard.press("ArrowRight");
  await page.locator(".chart-live").getByText("3E: from Sun, Nov 1 on").waitFor();
  await page.keyboard.press("ArrowRight");
  await page.locator(".chart-live").getByText("Indwelling urethral catheter: Mon, Nov 2 to Thu, Nov 5").waitFor();
  await page.getByText("The same as a table").click();
  await page.getByRole("row", { name: /^Thu, Nov 5: Date of event 3E .*Temperature 38.6 °C/ }).waitFor();
}

async function voidTheFever(page: Page): Promise<void> {
  await page.getByRole("link", { name: "sign", exact: true }).click();
  const sign = page.getByRole("article").filter({ hasText: "Temperature on Thu, Nov 5" });
  await sign.getByText("Change this entry").click();
  const form = sign.getByRole("form", { name: "Mark as entered in error" });
  await form.getByLabel("Why").fill("Read off the wrong chart");
  await form.getByRole("button", { name: "Mark the entry as entered in error" }).click();
  await sign.getByText("Entered in error: Read off the wrong chart").waitFor();
}

it("another edition's view of past cultures is told on the page of the rules, and opens to the case", async () => {
  const fever = { sign: "temperature" as const, finding: "present" as const, temperature: "38.6" };
  await served.desk.ask(endpoints.recordSigns, { patientId, day: day.parse("2026-11-05"), signs: [fever] });
  const page = await served.tab();
  await page.goto("/rules");
  await page.getByRole("heading", { name: "What another edition would say" }).waitFor();
  await page.getByLabel("Collected from").fill("2026-11-01");
  await page.getByLabel("Collected to").fill("2026-10-01");
  await page.getByRole("button", { name: "Compare", exact: true }).click();
  await page.getByRole("alert").getByText("before").first().waitFor();
  await page.getByLabel("Collected to").fill("2026-11-20");
  await page.getByRole("button", { name: "Compare", exact: true }).click();
  await page.getByText("1 of 1 compared would be determined otherwise.").waitFor();
  expect(new URL(page.url()).search).toBe("?edition=us-2024&other=ecdc-2017&first=2026-11-01&last=2026-11-20");
  await page.getByRole("link", { name: "Culture of" }).click();
  await page.getByRole("heading", { name: "Step by step" }).waitFor();
});

it("somebody who does not judge cases reads the rules without it", async () => {
  const page = await served.tab({ person: "bedside" });
  await page.goto("/rules");
  await page.getByRole("heading", { name: "Open points" }).waitFor();
  expect(await page.getByRole("heading", { name: "What another edition would say" }).count()).toBe(0);
});
