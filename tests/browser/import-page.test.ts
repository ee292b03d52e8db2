import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { readSentFiles } from "../../src/csv/sent-files.ts";
import { keepImporting } from "../../src/usecases/imports/keep-importing.ts";
import { lookedAt } from "../http/alder-bay.ts";
import { type Served, serveAlderBay } from "./browser.ts";

let served: Served;
let importer: ReturnType<typeof keepImporting>;
const errors: unknown[] = [];

beforeAll(async () => {
  served = await serveAlderBay();
  importer = keepImporting(served.hospital.store, {
    clock: () => lookedAt,
    readFiles: readSentFiles,
    onError: (error) => errors.push(error),
  });
}, 180_000);

afterAll(async () => {
  await importer?.stop();
  await served?.close();
});

const fileOf = (name: string, lines: readonly string[]) => ({
  name,
  mimeType: "text/csv",
  buffer: Buffer.from(lines.join("\r\n")),
});
const moves = fileOf("moves.csv", [
  "stay,patient,ward,from,to",
  "W-1,WP-1,3E,2026-11-10T08:00,2026-11-12T08:00",
  "W-2,WP-2,3E,2026-11-10T08:00,2026-11-09T08:00",
  "W-3,WP-3,3E,2026-11-10T08:00,2026-11-09T09:00",
]);
const catheters = fileOf("catheters.csv", ["stay,inserted,removed", "W-1,2026-11-10T09:00,2026-11-11T09:00"]);

async function sendFiles(page: Page, ...files: ReturnType<typeof fileOf>[]): Promise<void> {
  await page.goto("/imports");
  await page.getByLabel("CSV files").setInputFiles(files);
  await page.getByRole("button", { name: "Try these files" }).click();
}

it("files are tried, their faults stand beside the lines, and what is stored and repaired counts in the month", async () => {
  const page = await served.tab();
  await page.goto("/months/2026-11");
  await page.getByRole("row", { name: /^All units 26 6 / }).waitFor();
  await sendFiles(page, moves, catheters);
  await page.getByRole("heading", { name: "Decide" }).waitFor();
  await page.getByText("2 lines were rejected. The others can be stored without them.").waitFor();
  await page.getByRole("row", { name: "Time on units 1 0" }).waitFor();
  const faulty = page.getByRole("article", { name: "moves.csv, line 3" });
  await faulty.getByText("W-2,WP-2,3E,2026-11-10T08:00,2026-11-09T08:00").waitFor();
  await faulty.getByText("Column to:").waitFor();
  // Nothing can be repaired before it was decided that the line is set aside.
  expect(await faulty.getByText("Repair moves.csv, line 3").count()).toBe(0);
  await page.getByRole("button", { name: "Store the accepted lines, hold the rejected lines for repair" }).click();
  await page.getByText("Stored. The months count these lines now.").waitFor();
  await repairAndDrop(page);
  await page.getByRole("link", { name: "Open the months" }).click();
  // Two midnights of the first stay, one of them with its catheter, and one of the stay that was repaired.
  await page.getByRole("row", { name: /^All units 29 7 / }).waitFor();
  expect(errors).toEqual([]);
}, 60_000);

/** Repairs line 3 after a try that is refused at its field, and drops line 4; the focus goes to what was done. */
async function repairAndDrop(page: Page): Promise<void> {
  const faulty = page.getByRole("article", { name: "moves.csv, line 3" });
  await faulty.getByText("Repair moves.csv, line 3").focus();
  await page.keyboard.press("Enter");
  const to = faulty.getByLabel("to", { exact: false }).last();
  expect(await to.inputValue()).toBe("2026-11-09T08:00");
  await to.fill("2026-11-08T08:00");
  await to.press("Enter");
  await faulty.getByRole("alert").waitFor();
  expect(await to.getAttribute("aria-invalid")).toBe("true");
  expect(await to.inputValue()).toBe("2026-11-08T08:00");
  await to.fill("2026-11-11T08:00");
  await to.press("Enter");
  await page.getByRole("status").getByText("moves.csv, line 3 was stored.").waitFor();
  await expect.poll(() => faulty.count()).toBe(0);
  const other = page.getByRole("article", { name: "moves.csv, line 4" });
  await other.getByText("Repair moves.csv, line 4").click();
  await other.getByLabel("Why it is dropped").fill("Counted in another hospital");
  await other.getByRole("button", { name: "Drop this line" }).click();
  await page.getByText("No line of this import is held for repair.").waitFor();
  await other.getByText("Dropped: Counted in another hospital").waitFor();
}

it("work is told as it goes on, and an import is found again in the list", async () => {
  const page = await served.tab({ person: "administrator" });
  // So many that the work lasts over several questions of the page, which asks once a second.
  const rows = Array.from({ length: 8000 }, (_, n) => `B-${n},BP-${n},4N,2026-11-10T08:00,2026-11-11T08:00`);
  await sendFiles(page, fileOf("moves.csv", ["stay,patient,ward,from,to", ...rows]));
  await page
    .getByRole("status")
    .getByText(/^(Checking the lines: \d+ of 8,?000|Reading the files: \d+ lines)/)
    .waitFor();
  await page.getByRole("progressbar", { name: "Progress" }).waitFor();
  await page.getByText("No line was rejected. 8000 can be stored.").waitFor();
  await page.getByRole("button", { name: "Discard this import" }).click();
  await page.getByText("Discarded, nothing stored").waitFor();
  await page.getByRole("link", { name: "All imports" }).click();
  await page
    .getByRole("row", { name: /Import \d+ Nov 20, 10:00 Noa Lindqvist Files Discarded, nothing stored/ })
    .waitFor();
}, 90_000);

it("what cannot be sent is told at the field, and the choice is kept", async () => {
  const page = await served.tab();
  await page.goto("/imports");
  const button = page.getByRole("button", { name: "Try these files" });
  expect(await button.isDisabled()).toBe(true);
  const workbook = { name: "moves.csv", mimeType: "text/csv", buffer: Buffer.from([0x50, 0x4b, 3, 4, 0, 0xff, 0xfe]) };
  await page.getByLabel("CSV files").setInputFiles([workbook]);
  await button.click();
  await page.getByText("moves.csv is no text in UTF-8 or UTF-16.").first().waitFor();
  await page.getByLabel("CSV files").setInputFiles([fileOf("patients.csv", ["a,b"])]);
  await button.click();
  await page
    .getByRole("alert")
    .getByText(/Only files with these names are read/)
    .waitFor();
  await page.route("**/api/v1/imports", (route) =>
    route.request().method() === "POST" ? route.abort() : route.continue(),
  );
  await page.getByLabel("CSV files").setInputFiles([moves]);
  await button.click();
  await page.getByRole("alert").getByText("Not recorded: the server does not answer.").waitFor();
  await page.unroute("**/api/v1/imports");
  await page.getByRole("button", { name: "Send it again" }).click();
  await page.getByRole("heading", { name: "Decide" }).waitFor();
  // The same lines as before: stored ones are known, the repaired and the dropped one are refused again.
  await page.getByText("2 lines were rejected. The others can be stored without them.").waitFor();
});

it("a file that breaks off is told as a whole and can only be discarded", async () => {
  const page = await served.tab();
  await sendFiles(page, fileOf("moves.csv", ["name,of,nothing", "1,2,3"]));
  await page.getByRole("article", { name: "moves.csv, the whole file" }).waitFor();
  await page.getByText("A file cannot be read to its end").waitFor();
  expect(await page.getByRole("button", { name: /^Store/ }).count()).toBe(0);
});

it("the list says that it is loading, that nothing was imported, and that the server does not answer", async () => {
  const page = await served.tab({ person: "elsewhere" });
  let release = (): void => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  await page.route("**/api/v1/imports", async (route) => {
    await held;
    await route.continue();
  });
  await page.goto("/imports");
  await page.getByRole("status").getByText("Loading the imports…").waitFor();
  release();
  await page.getByText("Nothing was imported yet.").waitFor();
  await page.unroute("**/api/v1/imports");
  await page.route("**/api/v1/imports", (route) => route.abort());
  await page.reload();
  await page.getByRole("alert").getByText("The server does not answer.").waitFor();
});

it("is open to those who import, and to no other role; an import that is not there is told so", async () => {
  const bedside = await served.tab({ person: "bedside" });
  await bedside.goto("/imports");
  await bedside.getByRole("heading", { name: "Your role does not open this page" }).waitFor();
  expect(await bedside.getByRole("link", { name: "Import", exact: true }).count()).toBe(0);
  const page = await served.tab({ person: "administrator" });
  await page.goto("/imports/1999999999");
  await page.getByRole("alert").getByText("There is no such import in this facility.").waitFor();
  await page.getByRole("link", { name: "Import", exact: true }).click();
  await page.getByRole("heading", { name: "Imports so far" }).waitFor();
});

it("what the page shows is what the API says", async () => {
  const { imports } = await served.desk.ask(endpoints.listImports, {});
  expect(imports.map(({ state }) => state)).toEqual(expect.arrayContaining(["applied", "discarded", "checked"]));
});
