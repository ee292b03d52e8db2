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
    const form = page.getByRole("form", { name: /Void it/ });
    await form.getByLabel("Why").fill("Another patient's review");
    await form.getByRole("button", { name: "Void the entry" }).click();
    await page.getByText("Voided: Another patient's review").waitFor();
    await page.getByText("Reviews day by day").click();
    await page.getByRole("row", { name: /Friday, November 20, 2026 3E 3 overdue/ }).waitFor();
  });
});

describe("a patient's record", () => {
  it("records a move to any ward, and the ward's people still see the patient", async () => {
    const page = await served.tab({ person: "bedside" });
    await page.goto(`/patients/${beds[2].patientId}`);
    await page.getByText("Moved to another ward or bed").click();
    await page.getByLabel("To", { exact: true }).selectOption({ label: "4N Ward 4N" });
    await page.getByLabel("Moved at").fill("2026-11-20T09:50");
    await page.getByRole("button", { name: "Record the move" }).click();
    await page.getByText("Recorded.").waitFor();
    const { wardStays } = await served.desk.ask(endpoints.readPatient, { patientId: beds[2].patientId });
    expect(wardStays.map(({ wardId }) => wardId)).toEqual([served.hospital.wards["3E"], served.hospital.wards["4N"]]);
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
