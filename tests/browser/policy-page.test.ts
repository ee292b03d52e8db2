import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { day } from "../../shared/day.ts";
import { defaultPolicy } from "../../src/domain/policy/default-policy.ts";
import { type Served, serveAlderBay } from "./browser.ts";

const { listPolicies, readPolicy, setPolicy } = endpoints;
let served: Served;

beforeAll(async () => {
  served = await serveAlderBay();
}, 180_000);

afterAll(() => served?.close());

const rule = (page: Page, name: string) => page.getByRole("region", { name, exact: true });
const day20 = day.parse("2026-11-20");
const versionsOf = async (wardId: number | null) =>
  (await served.desk.ask(listPolicies, {})).policies.filter((policy) => policy.wardId === wardId);

describe("the policy page", () => {
  it("shows each rule with its default, its source and the sentence that it will print, and sets a version", async () => {
    const page = await served.tab({ person: "administrator" });
    await page.goto("/settings/policy");
    const review = rule(page, "Daily review");
    await review.getByText("Source: Daily: SHEA/IDSA/APIC practice recommendations").waitFor();
    await review.getByLabel("Review from catheter day").fill("3");
    await review.getByLabel("Due each day by").fill("10:30");
    const sentence =
      "Policy of the facility, version 1, from 2026-11-20: a catheter is reviewed every day from eligibility day 3 on, by 10:30.";
    await review.getByText(sentence).waitFor();
    const indications = rule(page, "Indications that are accepted");
    await indications.getByLabel("Add from the common list").selectOption({ label: "Blood in the urine with clots" });
    await indications.getByRole("group", { name: "Item 7" }).getByLabel("Source").fill("Urology, 2026");
    await rule(page, "Threshold")
      .getByLabel(/^With Blood in the urine/)
      .fill("4");
    await rule(page, "Record of an insertion").getByLabel("Attempts").check();
    await rule(page, "Bed held during a procedure").getByLabel("A held bed is listed after").fill("12");
    await page.getByLabel("Why").fill("Agreed with the units");
    await page.getByRole("button", { name: "Set this version" }).click();
    await page.getByText("Version 1 is set.").waitFor();
    await page.getByText("The facility's, version 1, from 2026-11-20 on: Agreed with the units").waitFor();
    await page.getByText("Set by Noa Lindqvist on 2026-11-20 10:00.").waitFor();
    const { body, sentences } = await served.desk.ask(readPolicy, { wardId: served.hospital.wards["4N"] });
    expect(sentences[0]?.sentence).toBe(sentence);
    expect(body).toEqual({
      ...defaultPolicy,
      ...{ reviewFromDay: 3, reviewDueAt: "10:30", bedHoldHours: 12 },
      thresholdByIndication: { perioperative: 2, "hematuria-clots": 4 },
      requiredFields: [...defaultPolicy.requiredFields, "attempts"],
      indications: [
        ...defaultPolicy.indications,
        { code: "hematuria-clots", label: "Blood in the urine with clots", source: "Urology, 2026" },
      ],
    });
  }, 60_000);

  it("tells what the server refuses at its field with the remedy, and loses nothing over a reload", async () => {
    const page = await served.tab();
    await page.goto(`/settings/policy?ward=${served.hospital.wards["4N"]}`);
    const review = rule(page, "Daily review");
    await review.getByLabel("Review from catheter day").fill("soon");
    await review.getByText("The sentence appears here once the fields are complete").waitFor();
    const bundle = rule(page, "Items of a maintenance bundle check");
    await bundle.getByRole("button", { name: "Add one of your own" }).click();
    const item = bundle.getByRole("group", { name: "Item 9" });
    await item.getByLabel("Short name").fill("Own Item");
    await item.getByLabel("In words").fill("The bag was emptied");
    await page.getByRole("button", { name: "Set this version" }).click();
    await page
      .getByRole("alert")
      .getByText(/items to fix/)
      .waitFor();
    for (const field of [review.getByLabel("Review from catheter day"), item.getByLabel("Short name")])
      expect(await field.getAttribute("aria-invalid")).toBe("true");
    await item.getByText(/write a short name of small letters/i).waitFor();
    for (const field of [item.getByLabel("Source"), page.getByLabel("Why")])
      expect(await field.getAttribute("aria-invalid")).toBe("true");
    await page.reload();
    await page.getByText("Your draft from before is here").waitFor();
    expect(await review.getByLabel("Review from catheter day").inputValue()).toBe("soon");
    expect(await item.getByLabel("In words").inputValue()).toBe("The bag was emptied");
    await page.getByRole("button", { name: "Start over" }).click();
    await expect.poll(() => review.getByLabel("Review from catheter day").inputValue()).toBe("3");
    expect(await versionsOf(served.hospital.wards["4N"])).toEqual([]);
  }, 60_000);

  it("shows both versions when somebody else set one meanwhile, and lets the person choose", async () => {
    const wardId = served.hospital.wards["3E"];
    const page = await served.tab();
    const setting = { wardId, fromDay: day20, replaces: 0, reason: "Agreed with the unit" };
    await page.goto(`/settings/policy?ward=${wardId}`);
    await page.getByLabel("Doubtful when not confirmed for").fill("24");
    await page.getByLabel("Why").fill("Fewer doubts");
    await served.desk.ask(setPolicy, { ...setting, body: { ...defaultPolicy, confirmationHours: 36 } });
    await page.getByRole("button", { name: "Set this version" }).click();
    const shown = (name: string, hours: number) =>
      page.getByRole("region", { name }).getByText(`not confirmed in place for ${hours} hours`).waitFor();
    await shown("What you are about to record", 24);
    await shown("What is there now", 36);
    expect(await page.getByLabel("Why").inputValue()).toBe("Fewer doubts");
    await page.getByRole("button", { name: "Record mine all the same" }).click();
    await page.getByText("Version 2 is set.").waitFor();
    expect((await versionsOf(wardId)).map(({ body }) => body?.confirmationHours)).toEqual([36, 24]);
    await page.getByLabel("The level above", { exact: false }).check();
    expect(await rule(page, "Daily review").count()).toBe(0);
    await page.getByLabel("Why").fill("One policy for all");
    await served.desk.ask(setPolicy, { ...setting, replaces: 2, body: defaultPolicy });
    await page.getByRole("button", { name: "Set this version" }).click();
    await page.getByRole("button", { name: "Keep what is there" }).click();
    await page.getByText("The unit's own (3E), version 3").waitFor();
    expect(await page.getByLabel("The rules below").isChecked()).toBe(true);
    expect(await page.getByLabel("Doubtful when not confirmed for").inputValue()).toBe("48");
  }, 60_000);

  it("is for reading where a role does not set policies", async () => {
    const page = await served.tab({ person: "manager" });
    await page.goto(`/settings/policy?ward=${served.hospital.wards["3E"]}`);
    await page.getByText("The unit's own (3E), version 1").waitFor();
    expect(await page.getByRole("button", { name: "Set this version" }).count()).toBe(0);
  });
});
