import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { type Served, serveAlderBay } from "./browser.ts";

const { admitPatient, cancelDischarge, dischargePatient, mergePatients, readPatient } = endpoints;
let served: Served;

beforeAll(async () => {
  served = await serveAlderBay();
}, 180_000);

afterAll(() => served?.close());

const admit = (identifier: string, admittedAt: string) =>
  served.desk.ask(admitPatient, {
    ...{ wardId: served.hospital.wards["3E"], identifier, number: identifier, admittedAt },
  });

/** A patient who was on 3E in November from one day to another. */
async function stay(identifier: string, from: number, to: number) {
  const at = (day: number) => `2026-11-${String(day).padStart(2, "0")}T08:00`;
  const admitted = await admit(identifier, at(from));
  await served.desk.ask(dischargePatient, { stayId: admitted.stayId, dischargedAt: at(to), seenVersion: 1 });
  return admitted;
}

describe("records of one person", () => {
  it("are merged, told on both records with who did it, and separated again with a reason", async () => {
    const [one, two] = [await stay("SAME-A", 2, 4), await stay("SAME-B", 6, 8)];
    const page = await served.tab();
    await page.goto(`/patients/${one.patientId}`);
    await page.getByText("Two records of one person").click();
    await page.getByLabel("Number of the other record").fill("SAME-B");
    await page.getByRole("button", { name: "Find the other record" }).click();
    await page.getByRole("button", { name: "Merge SAME-B into this record" }).click();
    await page.getByText("SAME-B was merged into SAME-A on Nov 20, 10:00 by Ash Moreno").waitFor();
    await page.goto(`/patients/${two.patientId}`);
    await page.getByText("This record was merged into SAME-A").waitFor();
    await page.getByRole("link", { name: "Open the record of SAME-A" }).click();
    await page.getByText("Take this merge back").click();
    const why = page.getByRole("region", { name: "Merged records" }).getByLabel("Why");
    const undo = page.getByRole("button", { name: "Separate the records" });
    expect(await undo.isDisabled()).toBe(true);
    await why.fill("x".repeat(501));
    await undo.click();
    await page.getByRole("alert").getByText("shorten the text to 500 characters").waitFor();
    expect(await why.inputValue()).toHaveLength(501);
    await why.fill("Twins with one birthday");
    await undo.click();
    await page.getByText("The merge was taken back.").waitFor();
    await expect.poll(() => page.getByRole("heading", { name: "Stay SAME-B" }).count()).toBe(0);
    const { survivorId, merges } = await served.desk.ask(readPatient, { patientId: two.patientId });
    expect([survivorId, merges]).toEqual([two.patientId, []]);
  });

  it("are told to bedside people, who do not separate them", async () => {
    const two = await stay("READ-B", 10, 12);
    const one = await admit("READ-A", "2026-11-19T08:00");
    await served.desk.ask(mergePatients, { patientId: one.patientId, fromId: two.patientId });
    const page = await served.tab({ person: "bedside" });
    await page.goto(`/patients/${one.patientId}`);
    await page.getByText("READ-B was merged into READ-A").waitFor();
    expect(await page.getByText("Take this merge back").count()).toBe(0);
  });

  it("show the survivor's number on the story of a catheter of the merged one, and authors who left by name", async () => {
    const two = await stay("STORY-B", 10, 12);
    const one = await admit("STORY-A", "2026-11-19T08:00");
    const found = { stayId: two.stayId, kind: "indwelling-urethral", foundAt: "2026-11-10T09:00" } as const;
    const { catheterId } = await served.desk.ask(endpoints.recordCatheterOnArrival, found);
    await served.desk.ask(endpoints.confirmCatheter, { catheterId, at: "2026-11-10T10:00" });
    await served.desk.ask(mergePatients, { patientId: one.patientId, fromId: two.patientId });
    const { store, people } = served.hospital;
    await store.tx((tx) => tx.db.person.update({ where: { id: people.prevention }, data: { active: false } }));
    const page = await served.tab({ person: "bedside" });
    await page.goto(`/patients/${one.patientId}/catheters/${catheterId}`);
    await page.getByText("STORY-A").first().waitFor();
    expect(await page.getByText("STORY-B").count()).toBe(0);
    await page
      .getByText(/Ash Moreno/)
      .first()
      .waitFor();
    await store.tx((tx) => tx.db.person.update({ where: { id: people.prevention }, data: { active: true } }));
  });
});

describe("a discharge that somebody else recorded meanwhile", () => {
  it("stands beside one's own; whoever stays with theirs takes it back first and loses nothing", async () => {
    const { patientId, stayId } = await admit("TWICE", "2026-11-19T08:00");
    const page = await served.tab({ person: "bedside" });
    await page.goto(`/patients/${patientId}`);
    await page.getByText("Discharged", { exact: true }).click();
    await page.getByLabel("Discharged at").fill("2026-11-20T09:00");
    await page.getByLabel("Where to").fill("Home with a nurse");
    const theirs = { dischargedAt: "2026-11-20T08:00", disposition: "Home" };
    await served.desk.ask(dischargePatient, { stayId, ...theirs, seenVersion: 1 });
    await page.getByRole("button", { name: "Record the discharge" }).click();
    const region = (name: string) => page.getByRole("region", { name }).textContent();
    await page.getByText("Another person changed this entry since you opened it").waitFor();
    expect(await region("What you are about to record")).toMatch(/2026-11-20 09:00.*Home with a nurse/);
    expect(await region("What is there now")).toMatch(/Nov 20, 08:00Where toHome(?! with)/);
    await page.getByRole("button", { name: "Record mine all the same" }).click();
    await page.getByText("Take the discharge that is there back first").waitFor();
    await page.locator("summary", { hasText: "Take the discharge back" }).click();
    await page.getByLabel("Why").fill("Left an hour later");
    await page.getByRole("button", { name: "Take the discharge back" }).click();
    await page.getByText("Recorded.").waitFor();
    await page.getByText("Discharged", { exact: true }).click();
    expect(await page.getByLabel("Where to").inputValue()).toBe("Home with a nurse");
    await page.getByRole("button", { name: "Record the discharge" }).click();
    await page.locator("summary", { hasText: "Take the discharge back" }).waitFor();
    const { stays } = await served.desk.ask(readPatient, { patientId });
    expect(stays[0]).toMatchObject({ dischargedAt: Date.UTC(2026, 10, 20, 14), disposition: "Home with a nurse" });
  });

  it("can be kept as it is", async () => {
    const { patientId, stayId } = await admit("KEPT", "2026-11-19T08:00");
    const page = await served.tab({ person: "bedside" });
    await page.goto(`/patients/${patientId}`);
    await page.getByText("Discharged", { exact: true }).click();
    await page.getByLabel("Where to").fill("Home");
    await served.desk.ask(dischargePatient, { stayId, dischargedAt: "2026-11-20T08:00", seenVersion: 1 });
    await page.getByRole("button", { name: "Record the discharge" }).click();
    await page.getByRole("button", { name: "Keep what is there" }).click();
    await page.getByText("from Nov 19, 08:00 to Nov 20, 08:00").waitFor();
    await page.locator("summary", { hasText: "Take the discharge back" }).waitFor();
  });

  it("is not taken back unseen when somebody took it back and recorded another one", async () => {
    const { patientId, stayId } = await admit("BACK", "2026-11-19T08:00");
    await served.desk.ask(dischargePatient, { stayId, dischargedAt: "2026-11-20T08:00", seenVersion: 1 });
    const page = await served.tab({ person: "bedside" });
    await page.goto(`/patients/${patientId}`);
    await page.locator("summary", { hasText: "Take the discharge back" }).click();
    await page.getByLabel("Why").fill("Still here");
    await served.desk.ask(cancelDischarge, { stayId, reason: "Wrong hour", seenVersion: 2 });
    await served.desk.ask(dischargePatient, { stayId, dischargedAt: "2026-11-20T09:30", seenVersion: 3 });
    await page.getByRole("button", { name: "Take the discharge back" }).click();
    await page.getByText("Another person changed this entry since you opened it").waitFor();
    expect(await page.getByRole("region", { name: "What is there now" }).textContent()).toContain("Nov 20, 09:30");
    expect(await page.getByLabel("Why").inputValue()).toBe("Still here");
    await page.getByRole("button", { name: "Record mine all the same" }).click();
    await page.getByText("Recorded.").waitFor();
    const { stays } = await served.desk.ask(readPatient, { patientId });
    expect(stays[0]?.dischargedAt).toBeNull();
  });
});
