import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { type Hourless, withoutHours } from "../http/hourless.ts";
import { pictureOf, type Served, serveAlderBay } from "./browser.ts";

let served: Served;
let one: Readonly<Record<"inPlace" | "removed", Hourless>>;

beforeAll(async () => {
  served = await serveAlderBay();
  one = await withoutHours(served.desk);
}, 180_000);

afterAll(() => served?.close());

const storyOf = ({ patientId, catheterId }: Hourless) => `/patients/${patientId}/catheters/${catheterId}`;
const read = ({ catheterId }: Hourless) => served.desk.ask(endpoints.readCatheter, { catheterId });

it("a removal without an hour is its day with an empty hour, stays so with another field, and takes the hour typed", async () => {
  const page = await served.tab({ person: "bedside" });
  await page.goto(storyOf(one.removed));
  await page.getByText("Change the catheter itself").click();
  const form = page.getByRole("form", { name: "Correct it" });
  const removed = form.getByLabel("Removed at", { exact: true });
  const hour = form.getByLabel("Removed at: Hour");
  expect([await removed.inputValue(), await hour.inputValue()]).toEqual(["2026-11-18", ""]);
  await form.getByText("Hour not recorded. Leave the hour empty to keep it so.").waitFor();
  for (const width of [1280, 820, 320]) {
    await page.setViewportSize({ width, height: 900 });
    await form.screenshot({ path: pictureOf("hour-not-recorded", width) });
  }
  await form.getByLabel("Size").fill("14");
  await form.getByLabel("Why").fill("Read on the package");
  await form.getByRole("button", { name: "Record the correction" }).click();
  await page.getByText(/14 Fr/).first().waitFor();
  expect(await read(one.removed)).toMatchObject({ sizeFr: 14, removedAt: null, noHour: ["removedAt"] });
  await page.getByText("Change the catheter itself").click();
  await hour.fill("13:20");
  await form.getByLabel("Why").fill("Removal note read");
  await form.getByRole("button", { name: "Record the correction" }).click();
  await page.getByText("Nov 18, 13:20").first().waitFor();
  const after = await read(one.removed);
  expect([after.removedAt, after.noHour]).toEqual([Date.UTC(2026, 10, 18, 18, 20), undefined]);
  // A correction names what the entry was, with its day alone.
  await page.getByText(/Removal note read/).click();
  await page.locator("details[open]").getByText("Nov 18, hour not recorded").first().waitFor();
});

it("an insertion without an hour is shown so in the lists, on the round and in its form, and keeps so with another day", async () => {
  const page = await served.tab({ person: "bedside" });
  const wardId = served.hospital.wards["3E"];
  for (const path of [`/wards/${wardId}/patients`, `/wards/${wardId}/round`, storyOf(one.inPlace)]) {
    await page.goto(path);
    await page
      .getByText(/Nov 18, hour not recorded/)
      .first()
      .waitFor();
    expect(await page.getByText(/Nov 1[48], 00:00/).count(), path).toBe(0);
  }
  await page.getByText("Change the catheter itself").click();
  const form = page.getByRole("form", { name: "Correct it" });
  await form.getByLabel("Inserted", { exact: true }).fill("2026-11-17");
  await form.getByLabel("Why").fill("Another line of the chart");
  await form.getByRole("button", { name: "Record the correction" }).click();
  await page.getByText("Nov 17, hour not recorded").first().waitFor();
  expect(await read(one.inPlace)).toMatchObject({ noHour: ["insertedAt"] });
});

it("time on a unit and a specimen without an hour have their day in the forms that correct them", async () => {
  const page = await served.tab({ person: "bedside" });
  const { patientId } = one.inPlace;
  await page.goto(`/patients/${patientId}`);
  await page.getByLabel("Correct or take back: 3E from Nov 14, hour not recorded").click();
  const wardStay = page.getByRole("form", { name: "Correct this time on a unit" });
  expect(await wardStay.getByLabel("From", { exact: true }).inputValue()).toBe("2026-11-14");
  await page.goto(`/patients/${patientId}/cultures`);
  await page.getByText("Change this entry").first().click();
  const specimen = page.getByRole("form", { name: "Correct it, or record a further report" });
  expect(await specimen.locator("input[type=date]").inputValue()).toBe("2026-11-19");
});
