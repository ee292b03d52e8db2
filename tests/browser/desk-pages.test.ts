import { afterAll, beforeAll, expect, it } from "vitest";
import { fillRound } from "../http/full-round.ts";
import { type Served, serveAlderBay } from "./browser.ts";

let served: Served;

beforeAll(async () => {
  served = await serveAlderBay();
  await fillRound(served.desk);
}, 180_000);

afterAll(() => served?.close());

it("the audit page finds who did what and checks the chain", async () => {
  const page = await served.tab({ person: "administrator" });
  await page.goto("/audit");
  expect(await page.getByRole("table").count()).toBe(0);
  await page.getByLabel("What").selectOption({ label: "Set a policy" });
  await page.getByRole("button", { name: "Search" }).click();
  await page.getByRole("row", { name: /Nov 20, 10:00 Ash Moreno Set a policy/ }).waitFor();
  expect(await page.getByRole("row").count()).toBe(2);
  await served.seal();
  await page.getByRole("button", { name: "Check the chain" }).click();
  await page.getByText(/^The chain is whole: \d+ entries, 0 waiting\.$/).waitFor();
});

it("the settings page shows each ward's policy in force with its sentences and versions", async () => {
  const page = await served.tab();
  await page.goto("/settings");
  await page.getByText("Version 1, in force from 2026-11-20 on.").waitFor();
  await page
    .getByText(/by 09:00/)
    .first()
    .waitFor();
  await page
    .getByRole("listitem")
    .filter({ hasText: "The unit's own (3E), version 1, from 2026-11-20 on: Agreed" })
    .waitFor();
  await page.getByLabel("Unit", { exact: true }).selectOption("4N");
  await page.getByText("This is the built-in policy").waitFor();
});

it("the home page shows figures without links to patients where a role does not see them, and other roles no page of theirs", async () => {
  const page = await served.tab({ person: "manager" });
  await page.goto("/");
  await page.getByText("10 patients, 9 catheters").waitFor();
  await page.getByText("4 overdue").waitFor();
  expect(await page.getByRole("link", { name: /Round/ }).count()).toBe(0);
  await page.goto(`/wards/${served.hospital.wards["3E"]}/round`);
  await page.getByRole("heading", { name: "Your role does not open this page" }).waitFor();
});

it("a hint of the first visit does not come back once it was read", async () => {
  const page = await served.tab({ person: "bedside" });
  await page.goto("/");
  await page.getByText("Choose your unit to see its round").waitFor();
  await page.getByRole("button", { name: "Do not show this again" }).click();
  await page.reload();
  await page.getByText("Round of 3E").waitFor();
  expect(await page.getByText("Choose your unit to see its round").count()).toBe(0);
});
