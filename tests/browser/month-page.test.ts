import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
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
  it("leads from the front address to the month that it is in the facility, with its figures", async () => {
    const page = await served.tab();
    await page.goto("/");
    await page.getByRole("heading", { name: "November 2026", level: 1 }).waitFor();
    await page.getByRole("row", { name: /^All wards/ }).waitFor();
    expect(new URL(page.url()).pathname).toBe("/months/2026-11");
    expect(await page.title()).toBe("November 2026 – Dwell Ledger");
    expect(await page.locator("html").getAttribute("lang")).toBe("en-US");
    const rows = await page.locator("table tr").allInnerTexts();
    const figures = rows.map((row) => row.match(/missing|\d+(\.\d+)?(?=\s|$)/g));
    // By hand, beside the record in tests/http/alder-bay.ts; 3/22, 3/4 and 6/26 to two decimals.
    expect(figures.slice(1)).toEqual([
      ["22", "3", "0.14"],
      ["4", "3", "0.75"],
      ["missing", "missing", "missing"],
      ["26", "6", "0.23"],
    ]);
    await page.getByText("Not counted, because nobody said what these wards are: OBS.").waitFor();
    await page.getByText("Read on November 20, 2026 at 10:00 (America/New_York).").waitFor();
  });

  it("opens a figure down to its patients by the keyboard alone", async () => {
    const page = await served.tab();
    await page.goto("/months/2026-11");
    await page.getByRole("row", { name: /^All wards/ }).waitFor();
    await tabTo(page, /catheter-days of 4N: show the ward days/);
    await page.keyboard.press("Enter");
    await page.getByRole("rowheader", { name: "Sat, Nov 7" }).waitFor();
    await tabTo(page, /catheter-days on Mon, Nov 9: show the patients/);
    await page.keyboard.press("Space");
    await page.getByRole("row", { name: "ALDER-1002 yes, in place" }).waitFor();
    await page.keyboard.press("Space");
    expect(await page.getByText("ALDER-1002").count()).toBe(0);
  });

  it("begins with a link that skips to the figures", async () => {
    const page = await served.tab();
    await page.goto("/");
    await page.getByRole("row", { name: /^All wards/ }).waitFor();
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Skip to the figures");
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
    await page.getByRole("row", { name: /^All wards/ }).waitFor();
    expect(await page.title()).toBe("November 2026 – Dwell Ledger");
    await page.getByLabel("Another month").fill("2026-09");
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: "September 2026" }).waitFor();
    // The link waits for the facility's clock, which may be answered after the heading is there.
    const onward = page.getByRole("link", { name: "October 2026 →" });
    await onward.waitFor();
    expect(await onward.count()).toBe(1);
  });

  it.each(["light", "dark"] as const)("has nothing for axe to find with everything open, %s", async (colorScheme) => {
    const page = await served.tab({ colorScheme });
    await openEverything(page);
    const { violations, passes } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.html)])).toEqual([]);
    expect(passes.length).toBeGreaterThan(20);
  });

  it.each([
    [1280, 900],
    [820, 1180],
    [320, 800],
  ])("fits a window %i wide without scrolling sideways, with targets of 44 px", async (width, height) => {
    const page = await served.tab({ viewport: { width, height } });
    await openEverything(page);
    await page.screenshot({ path: join(pictures, `month-${width}.png`), fullPage: true });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
    const boxes = await page.locator("button, input, nav a, .step").evaluateAll((controls) =>
      controls.map((control) => {
        const { width, height } = control.getBoundingClientRect();
        return { text: control.textContent, isLarge: width >= 44 && height >= 44 };
      }),
    );
    expect(boxes.length).toBeGreaterThan(40);
    expect(boxes.filter((box) => !box.isLarge)).toEqual([]);
  });

  it("prints the figures without the controls", async () => {
    const page = await served.tab({ viewport: { width: 900, height: 1200 } });
    await openEverything(page);
    await page.emulateMedia({ media: "print" });
    await page.screenshot({ path: join(pictures, "month-print.png"), fullPage: true });
    expect(await page.getByRole("navigation").isVisible()).toBe(false);
    expect(await page.getByRole("row", { name: /^All wards/ }).isVisible()).toBe(true);
    expect(await page.getByText("This tool counts and reminds.").isVisible()).toBe(true);
  });
});
