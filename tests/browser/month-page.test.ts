import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { axeFindings } from "./axe.ts";
import { type Served, serveAlderBay } from "./browser.ts";

let served: Served;

beforeAll(async () => {
  served = await serveAlderBay();
}, 180_000);

afterAll(() => served?.close());

const pictures = mkdtempSync(join(tmpdir(), "dwell-pictures-"));

/** Presses Tab until the focused control's name matches, as a person without a mouse does. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  const passed: string[] = [];
  for (let presses = 0; presses < 120; presses++) {
    await page.keyboard.press("Tab");
    const text = await page.evaluate(() => document.activeElement?.textContent ?? "");
    if (name.test(text)) return;
    passed.push(text);
  }
  throw new Error(`Tab never reached ${name}; it passed ${passed.join(" | ")}`);
}

/** Opens the month down to the patients of one day, with the mouse. */
async function openEverything(page: Page): Promise<void> {
  await page.goto("/months/2026-11");
  await page.getByRole("button", { name: /patient-days of 3E/ }).click();
  await page.getByRole("button", { name: /patient-days on Wed, Nov 4/ }).click();
  await page.getByText("ALDER-1001").waitFor();
}

describe("the month page", () => {
  it("leads from its address without a month to the one that it is in the facility, with its figures", async () => {
    const page = await served.tab();
    await page.goto("/months");
    await page.getByRole("heading", { name: "November 2026", level: 1 }).waitFor();
    await page.getByRole("row", { name: /^All units/ }).waitFor();
    expect(await page.title()).toBe("November 2026 – Dwell Ledger");
    expect(await page.locator("html").getAttribute("lang")).toBe("en-US");
    const rows = await page.locator("table").first().locator("tr").allInnerTexts();
    const figures = rows.map((row) => row.match(/missing|\d+(\.\d+)?(?=\s|$)/g));
    // By hand, beside the record in tests/http/alder-bay.ts; 3/22, 3/4 and 6/26 to two decimals.
    expect(figures.slice(1)).toEqual([
      ["22", "3", "0.14"],
      ["4", "3", "0.75"],
      ["missing", "missing", "missing"],
      ["26", "6", "0.23"],
    ]);
    await page.getByText("Not counted, because the setting of these units is not recorded: OBS.").waitFor();
    await page.getByText("Data as of November 20, 2026 at 10:00 (America/New_York).").waitFor();
  });

  it("shows cultures of catheters without a recorded sign, and hands out infections and cultures as files", async () => {
    const page = await served.tab();
    await page.goto("/months/2026-11");
    await page.getByText("Urine cultures of catheters without any recorded sign").click();
    const cultures = page.getByRole("region", { name: "Urine cultures by unit; scrolls sideways" });
    await cultures.getByRole("row", { name: /^All units/ }).waitFor();
    for (const [button, head] of [
      ["Infections as CSV", "ward,"],
      ["Cultures as CSV", "ward,name,cultures"],
    ] as const) {
      const [download] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", { name: button }).click(),
      ]);
      expect(readFileSync(await download.path(), "utf8")).toContain(head);
    }
  });

  it("opens a figure down to its patients by the keyboard alone", async () => {
    const page = await served.tab();
    await page.goto("/months/2026-11");
    await page.getByRole("row", { name: /^All units/ }).waitFor();
    await tabTo(page, /catheter-days of 4N: show the unit days/);
    await page.keyboard.press("Enter");
    await page.getByRole("rowheader", { name: "Sat, Nov 7" }).waitFor();
    await tabTo(page, /catheter-days on Mon, Nov 9: show the patients/);
    await page.keyboard.press("Space");
    await page.getByRole("row", { name: "ALDER-1002 yes, in place" }).waitFor();
    await page.keyboard.press("Space");
    expect(await page.getByText("ALDER-1002").count()).toBe(0);
  });

  it("begins with a link that skips to the content", async () => {
    const page = await served.tab();
    await page.goto("/months");
    await page.getByRole("row", { name: /^All units/ }).waitFor();
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Skip to the content");
    await page.keyboard.press("Enter");
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("content");
  });

  it("goes to other months with an address, a title and a heading of their own, and back", async () => {
    const page = await served.tab();
    await page.goto("/months/2026-11");
    await page.getByRole("link", { name: "← October 2026" }).click();
    await page.getByText("No patient was counted in this month.").waitFor();
    expect(new URL(page.url()).pathname).toBe("/months/2026-10");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("October 2026");
    await page.goBack();
    await page.getByRole("row", { name: /^All units/ }).waitFor();
    expect(await page.title()).toBe("November 2026 – Dwell Ledger");
    await page.getByLabel("Another month", { exact: true }).fill("2026-09");
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: "September 2026" }).waitFor();
    // The link waits for the facility's clock, which may be answered after the heading is there.
    const onward = page.getByRole("link", { name: "October 2026 →" });
    await onward.waitFor();
    expect(await onward.count()).toBe(1);
  });

  it("has nothing for axe to find with everything open", async () => {
    const page = await served.tab();
    await openEverything(page);
    expect(await axeFindings(page)).toEqual([]);
    // The rules are at work: a picture without words is found.
    await page.evaluate(() => document.querySelector("main")?.append(new Image(9, 9)));
    expect(JSON.stringify(await axeFindings(page))).toContain("image-alt");
  }, 120_000);

  it.each([
    [1280, 900],
    [820, 1180],
    [320, 800],
  ])("fits a window %i wide without scrolling sideways, with targets of 44 px", async (width, height) => {
    const page = await served.tab({ viewport: { width, height } });
    await openEverything(page);
    await page.screenshot({ path: join(pictures, `month-${width}.png`), fullPage: true });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
    // A word of the trade has a larger place to touch than its letters; its definition is closed.
    const touched = "button:not(.term), input, nav a, .step:not([popover] *)";
    const boxes = await page.locator(touched).evaluateAll((controls) =>
      controls.map((control) => {
        const { width, height } = control.getBoundingClientRect();
        return { text: control.textContent, isLarge: width >= 44 && height >= 44 };
      }),
    );
    expect(boxes.length).toBeGreaterThan(40);
    expect(boxes.filter((box) => !box.isLarge)).toEqual([]);
  });

  it("tells what is missing, what keeps the month from being signed first, and how to mend it", async () => {
    const page = await served.tab();
    await page.goto("/months/2026-11");
    const missing = page.getByRole("region", { name: "Data quality" });
    await missing.getByText("OBS: The setting of this unit is not recorded").waitFor();
    const lists = await missing.getByRole("list").allInnerTexts();
    expect(await missing.getByRole("heading", { level: 3 }).allInnerTexts()).toHaveLength(lists.length);
    expect(lists[0]).toContain("The month is not over");
    expect(lists[0]).toContain("In the settings, describe the unit");
  });

  it("sets another month beside it, under an address that can be kept, and shows it alone again", async () => {
    const page = await served.tab();
    await page.goto("/months/2026-11");
    await page.getByRole("row", { name: /^All units/ }).waitFor();
    await page.getByLabel("Compare with").fill("2026-10");
    await page.getByRole("button", { name: "Compare" }).click();
    await page.getByText("Two months side by side.").waitFor();
    expect(page.url()).toMatch(/2026-11\?beside=2026-10$/);
    // The earlier month first; patient-days, catheter-days, utilization as on the month's own page, October empty.
    const cells = await page.getByRole("row", { name: /^3E/ }).first().getByRole("cell").allInnerTexts();
    expect(cells).toEqual(["0", "22", "0", "3", "missing", "0.14"]);
    await page.getByRole("link", { name: "November 2026 alone" }).click();
    await page.getByRole("button", { name: /patient-days of 3E/ }).waitFor();
  });

  it("hands out its figures as a file, the same as the program's answer", async () => {
    const page = await served.tab();
    await page.goto("/months/2026-11");
    const started = page.waitForEvent("download");
    await page.getByRole("button", { name: "Days as CSV" }).click();
    const download = await started;
    expect(download.suggestedFilename()).toBe("days-2026-11.csv");
    const lines = readFileSync(await download.path(), "utf8").split("\n");
    expect(lines.slice(0, 2)).toEqual([
      "ward,name,patient_days,catheter_days,utilization,cautis,waiting,cannot_tell,cautis_not_final,note",
      expect.stringMatching(/^3E,.*,22,3,0\.136/),
    ]);
  });

  it("prints the figures without the controls", async () => {
    const page = await served.tab({ viewport: { width: 900, height: 1200 } });
    await openEverything(page);
    await page.emulateMedia({ media: "print" });
    await page.screenshot({ path: join(pictures, "month-print.png"), fullPage: true });
    expect(await page.getByRole("navigation").isVisible()).toBe(false);
    expect(await page.getByRole("row", { name: /^All units/ }).isVisible()).toBe(true);
    expect(await page.getByText("This tool counts and reminds.").isVisible()).toBe(true);
  });
});
