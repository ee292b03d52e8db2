import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { month } from "../../shared/day.ts";
import { type Served, serveAlderBay } from "./browser.ts";

const { addWard, endWatch, listScope, listWards, readFacility, readWardHistory } = endpoints;
let served: Served;

beforeAll(async () => {
  served = await serveAlderBay();
}, 180_000);

afterAll(() => served?.close());

describe("the pages of wards", () => {
  it("add a ward, which is listed at once; a code that is taken is told at its field", async () => {
    const page = await served.tab({ person: "administrator" });
    await page.goto("/settings/wards");
    await page.getByLabel("Code").fill("4N");
    await page.getByLabel("Name").fill("5 South");
    await page.getByRole("button", { name: "Add the unit" }).click();
    await page.getByRole("group", { name: "Setting" }).locator(".fault").waitFor();
    await page.getByLabel("Inpatient unit").check();
    await page.getByLabel("Beds").fill("many");
    await page.getByRole("button", { name: "Add the unit" }).click();
    await expect.poll(() => page.getByLabel("Beds").getAttribute("aria-invalid")).toBe("true");
    await page.getByLabel("Beds").fill("24");
    await page.getByRole("button", { name: "Add the unit" }).click();
    await page
      .getByRole("alert")
      .getByText(/Give the unit its own code/)
      .waitFor();
    expect(await page.getByLabel("Code").getAttribute("aria-invalid")).toBe("true");
    expect(await page.getByLabel("Name").inputValue()).toBe("5 South");
    await page.getByLabel("Code").fill("5S");
    await page.getByLabel("First day").fill("2026-11-01");
    await page.getByRole("button", { name: "Add the unit" }).click();
    await page.getByText("The unit was added.").waitFor();
    await page.getByRole("row", { name: /5S 5 South Inpatient unit 24 2026-11-01/ }).waitFor();
    expect(await page.getByLabel("Code").inputValue()).toBe("");
  }, 60_000);

  it("say what a ward is from a day on, with who said it, close it and open it again", async () => {
    const { wardId } = await served.desk.ask(addWard, {
      ...{ code: "6W", name: "6 West", type: "medical", beds: 10, setting: "inpatient", openedDay: null },
    });
    const page = await served.tab();
    await page.goto(`/settings/wards/${wardId}`);
    await page.getByLabel("Type").fill("surgical");
    await page.getByLabel("Beds").fill("12");
    await page.getByLabel("From this day on").fill("2026-12-01");
    const describing = page.getByRole("region", { name: "Say what it is from a day on" });
    await describing.getByLabel("Why").fill("Moved to the new building");
    await page.getByRole("button", { name: "Record what it is" }).click();
    await page.getByText("It is recorded, and the days since then were counted again.").waitFor();
    await page
      .getByRole("row", { name: /2026-12-01 6 West surgical Inpatient unit 12 Ash Moreno .* Moved to the new/ })
      .waitFor();
    const closing = page.getByRole("region", { name: "Close the unit" });
    await closing.getByRole("button").click();
    await expect.poll(() => closing.getByLabel("Last day").getAttribute("aria-invalid")).toBe("true");
    await closing.getByLabel("Last day").fill("2026-11-30");
    await closing.getByLabel("Why").fill("Renovation");
    await closing.getByRole("button").click();
    await page.getByText("The unit's last day is 2026-11-30.").waitFor();
    expect((await served.desk.ask(readWardHistory, { wardId })).closedDay).toBe("2026-11-30");
    await page.getByRole("region", { name: "Open the unit again" }).getByLabel("Why").fill("No renovation");
    await page.getByRole("button", { name: "Open it again" }).click();
    await page.getByText("The unit is open.").waitFor();
    const { wards } = await served.desk.ask(listWards, {});
    expect(wards.find((ward) => ward.wardId === wardId)?.closedDay).toBeNull();
  }, 60_000);

  it("tell that patients were there after the day on which a ward is to close", async () => {
    const page = await served.tab();
    await page.goto(`/settings/wards/${served.hospital.wards["3E"]}`);
    const closing = page.getByRole("region", { name: "Close the unit" });
    await closing.getByLabel("Last day").fill("2026-11-10");
    await closing.getByLabel("Why").fill("Renovation");
    await closing.getByRole("button").click();
    await closing
      .getByRole("alert")
      .getByText(/record their moves and discharges first/)
      .waitFor();
    expect(await closing.getByLabel("Why").inputValue()).toBe("Renovation");
  });

  it("are for reading where a role does not say what wards are", async () => {
    const page = await served.tab({ person: "bedside" });
    await page.goto(`/settings/wards/${served.hospital.wards["3E"]}`);
    await page.getByRole("row", { name: /always Ward 3E Inpatient unit Robin Vale/ }).waitFor();
    expect(await page.getByRole("button", { name: "Record what it is" }).count()).toBe(0);
    await page.goto(`/settings/wards/${served.hospital.wards["4N"]}`);
    await page.getByText("There is no such unit here.").waitFor();
  });
});

describe("the pages of census and surveillance", () => {
  it("set another census time from a month to come, and refuse other days at the field", async () => {
    const page = await served.tab({ person: "administrator" });
    await page.goto("/settings/census");
    await page.getByLabel("Time", { exact: true }).fill("6 am");
    await page.getByLabel("Why").fill("With the night shift");
    await page.getByRole("button", { name: "Set the census time" }).click();
    await page
      .getByRole("alert")
      .getByText(/write the census time as HH:MM/i)
      .waitFor();
    await page.getByLabel("Time", { exact: true }).fill("24:00");
    await page.getByLabel("From", { exact: true }).fill("2026-11-25");
    await page.getByRole("button", { name: "Set the census time" }).click();
    await page
      .getByRole("alert")
      .getByText(/first day of a month that has not begun/)
      .waitFor();
    expect(await page.getByLabel("From", { exact: true }).getAttribute("aria-invalid")).toBe("true");
    expect(await page.getByLabel("Why").inputValue()).toBe("With the night shift");
    await page.getByLabel("From", { exact: true }).fill("2027-01-01");
    await page.getByRole("button", { name: "Set the census time" }).click();
    await page.getByText("24:00 from 2027-01-01 on").waitFor();
    const { census } = await served.desk.ask(readFacility, {});
    expect(census.at(-1)).toEqual({ fromDay: "2027-01-01", time: "24:00" });
  }, 60_000);

  it("watch a ward for months, and refuse months that are watched already", async () => {
    const page = await served.tab();
    await page.goto("/settings/scope");
    await page.getByText("No unit is under surveillance yet.").waitFor();
    const watch = page.getByRole("button", { name: "Put under surveillance" });
    await watch.click();
    await expect.poll(() => page.getByLabel("Unit", { exact: true }).getAttribute("aria-invalid")).toBe("true");
    await page.getByLabel("Unit", { exact: true }).selectOption("3E");
    await page.getByLabel("First month").fill("2026-11");
    await watch.click();
    await page.getByText("The unit is under surveillance.").waitFor();
    await page
      .getByRole("row", { name: /^3E 2026-11 until further notice .*us-2024 Ash Moreno 2026-11-20 10:00$/ })
      .waitFor();
    await page.getByLabel("Unit", { exact: true }).selectOption("3E");
    const form = page.getByRole("form", { name: "Put a unit under surveillance" });
    await form.getByLabel("Last month").fill("2027-01");
    await watch.click();
    await page
      .getByRole("alert")
      .getByText(/End the other surveillance or mark it as entered in error first/)
      .waitFor();
    expect(await form.getByLabel("Last month").inputValue()).toBe("2027-01");
    expect((await served.desk.ask(listScope, {})).scopes).toHaveLength(1);
  }, 60_000);

  it("change the last month in which a ward is watched, beside what somebody else set meanwhile", async () => {
    const page = await served.tab();
    await page.goto("/settings/scope");
    const row = page.getByRole("row", { name: /^3E 2026-11/ });
    await row.getByText("Change this").click();
    await row.getByLabel("Last month").fill("2027-03");
    await row.getByLabel("Why").first().fill("The ward moves");
    const scopes = async () => (await served.desk.ask(listScope, {})).scopes;
    const { scopeId, wardId, version } = (await scopes())[0] ?? { scopeId: 0, wardId: 0, version: 0 };
    const other = { scopeId, wardId, toMonth: month.parse("2027-02"), reason: "Sooner", seenVersion: version };
    await served.desk.ask(endWatch, other);
    await row.getByRole("button", { name: "Record the last month" }).click();
    await row.getByRole("region", { name: "What is there now" }).getByText("2027-02").waitFor();
    await row.getByRole("button", { name: "Record mine all the same" }).click();
    await page.getByText("It is recorded.").waitFor();
    expect((await scopes()).map(({ toMonth }) => toMonth)).toEqual(["2027-03"]);
  }, 60_000);

  it("show the times and the watched wards of one's own to who does not set them", async () => {
    const page = await served.tab({ person: "bedside" });
    await page.goto("/settings/scope");
    await page.getByRole("row", { name: /^3E 2026-11/ }).waitFor();
    expect(await page.getByRole("button", { name: "Put under surveillance" }).count()).toBe(0);
    await page.goto("/settings/census");
    await page.getByText("00:00, from the beginning").waitFor();
    expect(await page.getByRole("button", { name: "Set the census time" }).count()).toBe(0);
  });
});
