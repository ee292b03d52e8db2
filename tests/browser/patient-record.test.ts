import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { fillRound } from "../http/full-round.ts";
import { type Served, serveAlderBay } from "./browser.ts";

let served: Served;
let beds: Awaited<ReturnType<typeof fillRound>>;

beforeAll(async () => {
  served = await serveAlderBay();
  beds = await fillRound(served.desk);
}, 180_000);

afterAll(() => served?.close());

describe("the story of a catheter", () => {
  it("draws its days and lets a note be voided with a reason, which stays to be read", async () => {
    const page = await served.tab({ person: "bedside" });
    await page.goto(`/patients/${beds[3].patientId}/catheters/${beds[3].catheterId}`);
    await page.getByRole("img", { name: /Days of the catheter from Wed, Nov 18 to Fri, Nov 20/ }).waitFor();
    await page.getByText("Change this entry").click();
    const form = page.getByRole("form", { name: /Mark as entered in error/ });
    await form.getByLabel("Why").fill("Another patient's review");
    await form.getByRole("button", { name: "Mark the entry as entered in error" }).click();
    await page.getByText("Entered in error: Another patient's review").waitFor();
    await page.getByText("Reviews day by day").click();
    await page.getByRole("row", { name: /Friday, November 20, 2026 3E 3 overdue/ }).waitFor();
  });
});

describe("a patient's record", () => {
  it("records a move to any ward, and the ward's people still see the patient", async () => {
    const page = await served.tab({ person: "bedside" });
    await page.goto(`/patients/${beds[2].patientId}`);
    await page.getByText("Moved to another unit or bed").click();
    await page.getByLabel("To", { exact: true }).selectOption({ label: "4N Ward 4N" });
    await page.getByLabel("Moved at").fill("2026-11-20T09:50");
    await page.getByRole("button", { name: "Record the move" }).click();
    await page.getByText("Recorded.").waitFor();
    const { wardStays } = await served.desk.ask(endpoints.readPatient, { patientId: beds[2].patientId });
    expect(wardStays.map(({ wardId }) => wardId)).toEqual([served.hospital.wards["3E"], served.hospital.wards["4N"]]);
  });

  it("corrects a bed and takes the move back, each with a reason, and tells at its field what cannot be", async () => {
    const page = await served.tab({ person: "bedside" });
    const { patientId } = beds[2];
    await page.goto(`/patients/${patientId}`);
    // A ward that is not the nurse's has its name all the same, and no link that would lead nowhere.
    await page.getByText("4N since Nov 20, 09:50").waitFor();
    expect(await page.getByRole("link", { name: "Patients of 4N" }).count()).toBe(0);
    await page.getByLabel("Correct or take back: 4N from Nov 20, 09:50").click();
    const correct = page.getByRole("form", { name: "Correct this time on a unit" });
    await correct.getByLabel("Bed", { exact: true }).fill("12");
    await correct.getByLabel("From", { exact: true }).fill("2026-10-01T09:00");
    expect(await correct.getByRole("button", { name: "Record the correction" }).isDisabled()).toBe(true);
    await correct.getByLabel("Why").fill("Typed in the wrong bed");
    await correct.getByRole("button", { name: "Record the correction" }).click();
    await correct.getByRole("alert").first().waitFor();
    expect(await correct.getByLabel("Bed", { exact: true }).inputValue()).toBe("12");
    await correct.getByLabel("From", { exact: true }).fill("2026-11-20T09:50");
    await correct.getByRole("button", { name: "Record the correction" }).click();
    await page.getByText("4N, bed 12").waitFor();
    await page.getByLabel("Correct or take back: 4N from Nov 20, 09:50").click();
    const back = page.getByRole("form", { name: /^Take this move back/ });
    await back.getByLabel("Why").fill("The patient did not go");
    await back.getByRole("button", { name: "Mark the entry as entered in error" }).click();
    await page.getByText("entered in error: The patient did not go").waitFor();
    const { wardStays } = await served.desk.ask(endpoints.readPatient, { patientId });
    expect(wardStays.map(({ endAt, voidReason }) => [endAt, voidReason])).toEqual([
      [null, null],
      [null, "The patient did not go"],
    ]);
  });

  it("corrects the admission with a reason, and shows both states when somebody else did so meanwhile", async () => {
    const page = await served.tab({ person: "bedside" });
    const { patientId, stayId } = beds[2];
    await page.goto(`/patients/${patientId}`);
    await page.getByText("Correct this stay, or mark it as entered in error").click();
    const form = page.getByRole("form", { name: "Correct this stay" });
    await form.getByLabel("Number of the stay").fill("BED-2B");
    await form.getByLabel("Why").fill("Read wrong from the wristband");
    const { stays } = await served.desk.ask(endpoints.readPatient, { patientId });
    const seenVersion = stays.find((stay) => stay.stayId === stayId)?.version ?? 0;
    await served.desk.ask(endpoints.correctStay, { stayId, seenVersion, number: "BED-2C", reason: "Another slip" });
    await form.getByRole("button", { name: "Record the correction" }).click();
    await form.getByText("BED-2C").waitFor();
    await form.getByRole("button", { name: /mine/i }).click();
    await page.getByRole("heading", { name: "Stay BED-2B" }).waitFor();
  });

  it("takes a day of birth later, with a reason, and keeps what the record said", async () => {
    const page = await served.tab({ person: "bedside" });
    await page.goto(`/patients/${beds[2].patientId}`);
    await page.getByText("Correct the day of birth or the sex").click();
    const form = page.locator("form", { hasText: "Some definitions ask for the age" });
    await form.getByLabel("Day of birth").fill("2027-01-01");
    await form.getByLabel("Why").fill("Asked the patient");
    await form.getByRole("button", { name: "Record the correction" }).click();
    await form.getByText("This day has not come yet.").first().waitFor();
    await form.getByLabel("Day of birth").fill("1951-07-04");
    await form.getByLabel("Sex").selectOption("female");
    await form.getByRole("button", { name: "Record the correction" }).click();
    await page.getByText("1951-07-04").first().waitFor();
    await page.getByText(/Asked the patient/).waitFor();
  });

  it("finds a patient by number without the number in any address", async () => {
    const page = await served.tab({ person: "bedside" });
    const asked: string[] = [];
    page.on("request", (request) => asked.push(request.url()));
    await page.goto(`/wards/${served.hospital.wards["3E"]}/patients`);
    await page.getByLabel("The patient's number in the hospital").fill("BED-6");
    await page.getByRole("button", { name: "Find" }).click();
    await page.getByRole("heading", { name: "Stay BED-6" }).waitFor();
    expect(asked.filter((url) => url.includes("BED"))).toEqual([]);
  });
});
