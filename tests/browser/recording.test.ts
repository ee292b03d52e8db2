import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { fillRound } from "../http/full-round.ts";
import { axeFindings } from "./axe.ts";
import { type Served, serveAlderBay } from "./browser.ts";

let served: Served;
let beds: Awaited<ReturnType<typeof fillRound>>;

beforeAll(async () => {
  served = await serveAlderBay();
  beds = await fillRound(served.desk);
}, 180_000);

afterAll(() => served?.close());

const catheterPath = ({ patientId, catheterId }: { patientId: number; catheterId: number }) =>
  `/patients/${patientId}/catheters/${catheterId}`;
const choose = (page: Page, question: string, answer: string) =>
  page.getByRole("group", { name: question }).getByLabel(answer, { exact: true }).check();
const next = (page: Page) => page.getByRole("button", { name: "Next" }).click();

describe("a patient who is admitted on the page", () => {
  it("is asked for the catheter they came with: found in place in six touches from the round", async () => {
    const page = await served.tab({ person: "bedside" });
    await page.goto(`/wards/${served.hospital.wards["3E"]}/admission`);
    await page.getByLabel("The patient's number in the hospital").fill("NEW-1");
    await page.getByLabel("The number of the stay").fill("NEW-S1");
    await page.getByRole("button", { name: "Admit" }).click();
    await page.getByText("Does the patient have a urinary catheter?").waitFor();
    await page.goto(`/wards/${served.hospital.wards["3E"]}/round`);
    let touches = 0;
    const touch = async (act: Promise<unknown>) => {
      touches++;
      await act;
    };
    await touch(page.getByRole("navigation").getByRole("link", { name: "Patients" }).click());
    await touch(page.getByRole("article", { name: "NEW-1" }).getByRole("link", { name: "Found in place" }).click());
    await touch(choose(page, "Why it is needed", "Comfort at the end of life"));
    await touch(page.getByRole("button", { name: "Record that it is in place" }).click());
    await page.getByRole("article", { name: /NEW-1/ }).waitFor();
    expect(touches).toBeLessThanOrEqual(6);
    expect(new URL(page.url()).pathname).toMatch(/round$/);
  });

  it("keeps what was written when the server refuses it, and tells it at the field", async () => {
    const page = await served.tab({ person: "bedside" });
    await page.goto(`/wards/${served.hospital.wards["3E"]}/admission`);
    await page.getByLabel("The patient's number in the hospital").fill("NEW-2");
    await page.getByLabel("The number of the stay").fill("BED-2");
    await page.getByLabel("Admitted at").fill("2026-11-20T09:00");
    await page.getByRole("button", { name: "Admit" }).click();
    const alert = page.getByRole("alert");
    await alert.getByText(/Give the stay its own number/).waitFor();
    expect(await page.getByLabel("The patient's number in the hospital").inputValue()).toBe("NEW-2");
    expect(await page.getByLabel("The number of the stay").inputValue()).toBe("BED-2");
  });
});

describe("a guided insertion", () => {
  it("keeps its draft over a reload and the back button, checks while typing, and ends with the whole record", async () => {
    const { patientId, stayId } = beds[12];
    const path = `/patients/${patientId}/stays/${stayId}/insertion`;
    const page = await served.tab({ person: "prevention" });
    await page.goto(path);
    await choose(page, "Hand hygiene", "Yes");
    await choose(page, "Why it is needed", "Comfort at the end of life");
    await next(page);
    await choose(page, "Sterile technique held", "Yes");
    await page.getByLabel("Attempts").fill("1");
    await next(page);
    await page.getByLabel("Inserted").fill("2026-11-19T07:30");
    await page.getByLabel("Size").fill("40");
    await page.getByText("is 3 to 30 Fr").first().waitFor();
    expect(await page.getByLabel("Size").getAttribute("aria-invalid")).toBe("true");
    await page.getByLabel("Size").fill("22");
    await page.getByLabel("Balloon volume").fill("10");
    await page.reload();
    await page.getByText("Step 3 of 6").waitFor();
    expect(await page.getByLabel("Size").inputValue()).toBe("22");
    await page.goBack();
    await page.getByText("Step 2 of 6").waitFor();
    expect(await page.getByLabel("Attempts").inputValue()).toBe("1");
    await page.goForward();
    await next(page);
    await page.getByLabel("Urine returned (mL)").fill("300");
    await choose(page, "Urine appearance", "Clear");
    await next(page);
    await choose(page, "Inserted by", "Registered nurse");
    await choose(page, "Where", "Unit");
    await next(page);
    await page.getByRole("button", { name: "Record insertion" }).click();
    // The policy asks for the patient response, which was left out: the server says so.
    await page
      .getByRole("alert")
      .getByText(/Not recorded/)
      .waitFor();
    expect(await page.getByRole("alert").innerText()).toMatch(/response/i);
    expect(await axeFindings(page)).toEqual([]);
    await page.goto(`${path}?step=5`);
    await page.getByLabel("Patient response").fill("Well");
    await next(page);
    await page.getByRole("button", { name: "Record insertion" }).click();
    await page.getByRole("button", { name: "I checked it: this value is right" }).click();
    await page.getByRole("heading", { name: "Recorded" }).waitFor();
    const record = await page.locator("main").innerText();
    for (const said of ["22 Fr", "Urine returned (mL)", "300", "Comfort at the end of life", "not recorded"])
      expect(record).toContain(said);
    await page.goto(path);
    await page.getByText("Step 1 of 6").waitFor();
    expect(await page.getByText("Your draft from before is here").count()).toBe(0);
  }, 60_000);
});

describe("a care check and a removal", () => {
  it("are recorded item by item, and what nobody looked at stays not recorded", async () => {
    const page = await served.tab({ person: "bedside" });
    await page.goto(`${catheterPath(beds[9])}/care`);
    await page.getByRole("button", { name: "All kept" }).click();
    await choose(page, "The catheter is secured", "Not kept");
    await choose(page, "The indication is documented today", "Not recorded");
    await page.getByRole("button", { name: "Record bundle check" }).click();
    await page.getByRole("heading", { name: "Recorded: maintenance bundle check" }).waitFor();
    const { notes } = await served.desk.ask(endpoints.readCatheter, { catheterId: beds[9].catheterId });
    const items = notes.find(({ kind }) => kind === "care-check")?.items ?? {};
    expect([items["closed-system"], items.secured, items["indication-documented"]]).toEqual([
      ...["kept", "broken", undefined],
    ]);
  });

  it("are shown with both states when somebody else changed the catheter, and the person chooses", async () => {
    const page = await served.tab({ person: "bedside" });
    const { catheterId } = beds[4];
    await page.goto(`${catheterPath(beds[4])}/removal`);
    await page.getByLabel("Removed at").fill("2026-11-20T09:30");
    await page.getByLabel("Comment").fill("Went well");
    await served.desk.ask(endpoints.correctCatheter, { catheterId, sizeFr: 16, reason: "Misread", seenVersion: 1 });
    await page.getByRole("button", { name: "Record removal" }).click();
    await page.getByText("Another person changed this entry since you opened it").waitFor();
    expect(await axeFindings(page)).toEqual([]);
    expect(await page.getByRole("region", { name: "What you are about to record" }).innerText()).toContain("09:30");
    expect(await page.getByLabel("Comment").inputValue()).toBe("Went well");
    await page.getByRole("button", { name: "Record mine all the same" }).click();
    await page.getByRole("heading", { name: "Recorded: removal" }).waitFor();
    const { removedAt, removalRecord } = await served.desk.ask(endpoints.readCatheter, { catheterId });
    expect([removedAt, removalRecord]).toEqual([Date.UTC(2026, 10, 20, 14, 30), { remark: "Went well" }]);
  });

  it("can stand in two tabs: the second is told that the first recorded the removal", async () => {
    const tabs = [await served.tab({ person: "bedside" }), await served.tab({ person: "bedside" })];
    for (const page of tabs) {
      await page.goto(`${catheterPath(beds[7])}/removal`);
      await page.getByLabel("Removed at").fill("2026-11-20T09:45");
    }
    const [first, second] = tabs;
    await first?.getByRole("button", { name: "Record removal" }).click();
    await first?.getByRole("heading", { name: "Recorded: removal" }).waitFor();
    await second?.getByRole("button", { name: "Record removal" }).click();
    await second?.getByText("Another person changed this entry since you opened it").waitFor();
    await second?.getByRole("button", { name: "Keep what is there" }).click();
    await second?.getByText("This catheter's removal is recorded already.").waitFor();
  });
});
