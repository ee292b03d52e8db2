import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { day } from "../../shared/day.ts";
import { inputs } from "../http/inputs.ts";
import type { Subjects } from "../http/subjects.ts";
import { axeFindings } from "./axe.ts";
import { pictureOf, type Served, serveAlderBay } from "./browser.ts";

const { admitPatient, describeWard, dischargePatient, insertCatheter, removeCatheter } = endpoints;
/** Also after the month was signed. */
const late = { acknowledge: true } as const;
let served: Served;

beforeAll(async () => {
  served = await serveAlderBay();
  await inOctober("OCT-1");
}, 180_000);

afterAll(() => served?.close());

/** Three patient-days, two catheter-days on 3E. */
async function inOctober(number: string): Promise<void> {
  const { desk, hospital } = served;
  const admission = { wardId: hospital.wards["3E"], identifier: number, number, admittedAt: "2026-10-10T08:00" };
  const { stayId } = await desk.ask(admitPatient, admission, late);
  const insertion = inputs.insertCatheter({ stayId, at: "2026-10-10T09:00" } as Subjects);
  const { catheterId } = await desk.ask(insertCatheter, insertion, late);
  await desk.ask(removeCatheter, { catheterId, removedAt: "2026-10-12T09:00", seenVersion: 1 }, late);
  await desk.ask(dischargePatient, { stayId, dischargedAt: "2026-10-13T10:00", seenVersion: 1 }, late);
}

it("shows every figure of a ward with its interval, what it is made of, and why it is missing", async () => {
  const page = await served.tab();
  await page.goto("/months/2026-10");
  const statistics = page.getByRole("region", { name: "Statistics" });
  await statistics.getByLabel("Figures of").selectOption("3E");
  const row = (name: RegExp) => statistics.getByRole("row", { name }).innerText();
  expect(await row(/^Device utilization ratio/)).toMatch(/0\.67[\s\S]*95 %: 0\.\d\d to 0\.\d\d[\s\S]*2 of 3/);
  expect(await row(/^Median dwell time/)).toMatch(/3\.0[\s\S]*1 of 1/);
  expect(await row(/^CAUTI rate/)).toMatch(/Not watched for infections in this month/);
  await statistics.getByText(/Where catheters were inserted: unit 1\. By whom: registered nurse 1\./).waitFor();
  // Every figure opens to its rows: of the wards together to each ward's, of a ward to its days and catheters.
  await statistics.getByRole("button", { name: "Details Patient-days" }).click();
  await statistics
    .getByRole("button", { name: /patient-days on Sun, Oct 11: show the patients/ })
    .first()
    .waitFor();
  await statistics.getByRole("button", { name: "Details Catheters inserted" }).click();
  await statistics.getByRole("row", { name: "Saturday, October 10, 2026 OCT-1 catheter inserted" }).waitFor();
  expect(await axeFindings(page)).toEqual([]);
  await page.screenshot({ path: pictureOf("statistics opened", 1280), fullPage: true });
  await statistics.getByLabel("Figures of").selectOption("All units");
  await statistics.getByRole("button", { name: "Details Catheter-days" }).click();
  await statistics.getByRole("row", { name: "3E 2", exact: true }).waitFor();
  await statistics.getByRole("link", { name: "OCT-1" }).waitFor({ state: "detached" });
}, 60_000);

it("is signed when what blocks it is mended, shows what was recorded since, and is signed anew with a reason", async () => {
  const { desk, hospital } = served;
  const page = await served.tab();
  await page.goto("/months/2026-10");
  const signature = page.getByRole("region", { name: "Signature" });
  await signature.getByText("1 item to resolve before signing:").waitFor();
  const ward = { name: "Observation", type: null, setting: "outpatient", beds: null, reason: "Described" } as const;
  await desk.ask(describeWard, { ...ward, wardId: hospital.wards.OBS, fromDay: day.parse("2026-01-01") });
  await page.reload();
  // What is recorded between reading and signing is not signed unseen.
  await signature.getByRole("button", { name: "Sign October 2026" }).waitFor();
  await inOctober("OCT-2");
  await signature.getByRole("button", { name: "Sign October 2026" }).click();
  await signature.getByText("The figures are no longer those that you saw").waitFor();
  await signature.getByRole("button", { name: "Read the month again" }).click();
  await page
    .getByRole("row", { name: /^Patient-days/ })
    .getByText("6", { exact: true })
    .waitFor();
  await signature.getByRole("button", { name: "Sign October 2026" }).click();
  await signature.getByText(/Signed by Ash Moreno, infection prevention, on November 20, 2026.* 10:00/).waitFor();
  await signature.getByText("Nothing in the record of this month has changed since.").waitFor();
  await inOctober("OCT-3");
  await page.reload();
  // The figures as signed have the present ones beside them at the top; the signature leads there.
  const changed = page.getByRole("region", { name: /no longer as they were signed/ });
  await changed.getByRole("row", { name: /^3E Patient-days 6 9/ }).waitFor();
  expect(await changed.innerText()).not.toMatch(/\d\.\d{7}/);
  await signature.getByRole("link", { name: /no longer as they were signed/ }).waitFor();
  expect(await axeFindings(page)).toEqual([]);
  for (const width of [1280, 820, 320]) {
    await page.setViewportSize({ width, height: 900 });
    await page.screenshot({ path: pictureOf("month changed since it was signed", width), fullPage: true });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
  }
  await page.emulateMedia({ media: "print" });
  await page.screenshot({ path: pictureOf("month signed, printed", 820), fullPage: true });
  await page.emulateMedia({ media: "screen" });
  await signature.getByRole("button", { name: "Sign October 2026 again" }).click();
  await signature
    .getByText(/Say why the month is signed again/)
    .first()
    .waitFor();
  await signature.getByLabel("Why it is signed again").fill("A stay was recorded late");
  await signature.getByRole("button", { name: "Sign October 2026 again" }).click();
  await signature.getByText(/Amendment 1: .*A stay was recorded late/s).waitFor();
  await changed.waitFor({ state: "detached" });
}, 120_000);

it("shows a manager who signed, and nothing to sign", async () => {
  const page = await served.tab({ person: "manager" });
  await page.goto("/months/2026-10");
  const signature = page.getByRole("region", { name: "Signature" });
  await signature.getByText(/Signed by Ash Moreno/).waitFor();
  expect(await signature.getByRole("button", { name: /sign/i }).count()).toBe(0);
}, 60_000);
