import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { type Served, serveAlderBay } from "./browser.ts";

let served: Served;

beforeAll(async () => {
  served = await serveAlderBay();
  // Somebody to count in a month that is over.
  await served.desk.ask(endpoints.admitPatient, {
    ...{ wardId: served.hospital.wards["3E"], identifier: "OCT-1", number: "OCT-1", admittedAt: "2026-10-10T08:00" },
  });
}, 180_000);

afterAll(() => served?.close());

const origin = {
  Name: "Practice region",
  Source: "Invented for this test, table 1",
  Year: "2025",
  Population: "Invented hospitals",
  Definition: "Invented",
  Edition: "1",
};

it("a baseline is typed or read from a file, with its faults at their lines, and months are compared with it", async () => {
  const page = await served.tab();
  await page.goto("/settings/baselines");
  await page.getByText("No comparison is set yet").waitFor();
  const add = page.getByRole("form", { name: "Add a baseline" });
  for (const [label, value] of Object.entries(origin)) await add.getByLabel(label, { exact: true }).fill(value);
  const rows = add.getByLabel("Rows, one line each");
  expect(await rows.inputValue()).toContain("ward_type,infections,catheter_days");
  const file = (text: Buffer) => ({ name: "rates.csv", mimeType: "text/csv", buffer: text });
  const choose = add.getByLabel("Or read the rows from a CSV file");
  await choose.setInputFiles(file(Buffer.from([0xff, 0xfe, 0, 0, 1])));
  await add.getByRole("alert").getByText("This file is no text").waitFor();
  const header = "ward_type,rate_per_1000,utilization\n";
  await choose.setInputFiles(file(Buffer.from(`${header}medical,1.5,0.2\nsurgical,many,0.3\n`)));
  await add.getByRole("button", { name: "Add this baseline" }).click();
  await add.getByText(/^Line 3: rate_per_1000 must be a number of zero or more/).waitFor();
  await rows.fill(`${header}medical,1.5,0.2\nsurgical,2,0.3\n`);
  await add.getByRole("button", { name: "Add this baseline" }).click();
  await page.getByText("The baseline was added.").waitFor();
  await page.getByRole("heading", { name: "Practice region" }).waitFor();
  await page.getByText("2 rows").click();
  await page.getByRole("row", { name: "surgical 2 0.3" }).waitFor();
  const set = page.getByRole("form", { name: "Set what months are compared with" });
  await set.getByLabel("From month").fill("2026-10");
  await set.getByLabel("Infections (SIR)").selectOption("Practice region");
  await set.getByLabel("Target SIR").fill("0.75");
  await set.getByLabel("What a model asks for").fill("3E, beds, 24\nNOWHERE, beds, 3");
  await set.getByLabel("Why").fill("Agreed");
  await set.getByRole("button", { name: "Compare months with this" }).click();
  await page.getByRole("alert").first().waitFor();
  await set.getByLabel("What a model asks for").fill("3E, beds, 24");
  await set.getByRole("button", { name: "Compare months with this" }).click();
  await page.getByRole("row", { name: /^1 2026-10 Practice region none 0\.75 .* Agreed Ash Moreno/ }).waitFor();
  const { comparisons } = await served.desk.ask(endpoints.listComparisons, {});
  expect(comparisons.map(({ factors }) => factors)).toEqual([
    [{ wardId: served.hospital.wards["3E"], factor: "beds", value: 24 }],
  ]);
}, 60_000);

it("the wards' own counts of a month that is over become one, and of a month that is not they do not", async () => {
  const page = await served.tab();
  await page.goto("/settings/baselines");
  const own = page.getByRole("form", { name: "Use the units' own counts" });
  await own.getByLabel("Name").fill("Our October");
  await own.getByLabel("First month").fill("2026-10");
  await own.getByLabel("Last month").fill("2026-11");
  await own.getByRole("button", { name: "Add these counts as a baseline" }).click();
  await own
    .getByText(/2026-11 is not over yet/)
    .first()
    .waitFor();
  await own.getByLabel("Last month").fill("2026-10");
  await own.getByRole("button", { name: "Add these counts as a baseline" }).click();
  const card = page.getByRole("article", { name: "Our October" });
  await card.getByText("1 row").click();
  // Censuses at 00:00 from the 11th to the 31st, nobody with a catheter, and nobody watched the ward.
  await card.getByRole("row", { name: "3E 0 21" }).waitFor();
});

it("a nurse of a ward reads with what months are compared and sets nothing", async () => {
  const page = await served.tab({ person: "bedside" });
  await page.goto("/settings/baselines");
  await page.getByRole("heading", { name: "Practice region" }).waitFor();
  expect(await page.getByRole("form").count()).toBe(0);
});
