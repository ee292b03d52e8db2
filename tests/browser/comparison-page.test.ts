import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { watchWard } from "../../shared/api/scope.ts";
import { compareWards } from "../../shared/api/ward-comparisons.ts";
import { month } from "../../shared/day.ts";
import { drawChart } from "../../src/charts/draw-chart.ts";
import { svgText } from "../../src/charts/svg-text.ts";
import { type Served, serveAlderBay } from "./browser.ts";

let served: Served;
let page: Page;
beforeAll(async () => {
  served = await serveAlderBay();
  // Watched, so that there are rates to draw.
  for (const wardId of [served.desk.hospital.wards["3E"], served.desk.hospital.wards["4N"]])
    await served.desk.ask(watchWard, {
      ...{ wardId, fromMonth: month.parse("2025-12"), toMonth: null, edition: "us-2024" },
    });
  page = await served.tab({ person: "manager" });
  await page.goto("/comparison");
  await page.getByRole("heading", { name: "Device utilization by month" }).waitFor();
}, 180_000);
afterAll(() => served?.close());

const section = (name: string) => page.getByRole("region", { name, exact: true });

describe("the comparison of wards, for a manager", () => {
  it("draws the very drawing that the server draws", async () => {
    const { charts } = await served.desk.ask(compareWards, {}, { person: "manager" });
    const expected = charts.flatMap((chart) => drawChart(chart) ?? []).map(({ svg }) => svgText(svg));
    const drawn = await page
      .locator(".chart")
      .evaluateAll((all) => all.map((one) => new XMLSerializer().serializeToString(one)));
    // Which point the tab key stops at is the page's own.
    const plain = (text: string) =>
      text.replaceAll(/ tabindex="-?\d"/g, "").replaceAll(/<(\w+)([^>]*)\/>/g, "<$1$2></$1>");
    expect(drawn.length).toBeGreaterThan(2);
    expect(drawn.map(plain)).toEqual(expected.map(plain));
  });

  it("can be read point by point with the arrows: one stop of the tab key, and each point's text below the chart", async () => {
    const chart = section("Device utilization by month");
    const points = chart.locator(".chart-point");
    expect(await chart.locator('.chart-point[tabindex="0"]').count()).toBe(1);
    await points.first().focus();
    const said = chart.locator("[aria-live=polite]");
    const texts = [await said.textContent()];
    for (const key of ["ArrowRight", "ArrowRight", "ArrowRight"]) {
      await page.keyboard.press(key);
      texts.push(await said.textContent());
    }
    // 3/22, 3/4 and 6/26, counted by hand in tests/http/alder-bay.ts.
    expect(texts).toEqual([
      "3E, 2026-11: 0.14 catheter-days per patient-day",
      "4N, 2026-11: 0.75 catheter-days per patient-day",
      "all units, 2026-11: 0.23 catheter-days per patient-day",
      "3E, 2026-11: 0.14 catheter-days per patient-day",
    ]);
  });

  it("can be read in forced colors: words stand out from the paper", async () => {
    await page.emulateMedia({ forcedColors: "active" });
    const fillOf = (selector: string) =>
      section("Device utilization by month")
        .locator(selector)
        .first()
        .evaluate((one) => getComputedStyle(one).fill);
    const paper = await fillOf('.chart [fill="#ffffff"]');
    expect(await fillOf(".chart text")).not.toBe(paper);
    await page.emulateMedia({ forcedColors: "none" });
  });

  it("has the table behind each chart, which says what is missing", async () => {
    const chart = section("Device utilization by month");
    await chart.getByText("The figures as a table").click();
    const last = chart.getByRole("row", { name: "2026-11" });
    expect(await last.getByRole("cell").allTextContents()).toEqual(["0.14", "0.75", "0.23"]);
    expect(await chart.getByRole("row", { name: "2025-12" }).getByRole("cell").allTextContents()).toEqual([
      ...["missing", "missing", "missing"],
    ]);
  });

  it("opens figures of own wards to ward days and to nothing else", async () => {
    const wards = section("The units");
    expect(await wards.getByRole("button").count()).toBe(1);
    await wards.getByRole("button", { name: "catheter-days of 3E: show the unit days" }).click();
    await wards.getByText("Your role shows unit days; it does not show patients.").waitFor();
  });

  it("keeps in the address what is compared, and tests two wards with the caution", async () => {
    await page.getByLabel("Look closer at").selectOption("4N");
    await page.getByRole("button", { name: "Show", exact: true }).click();
    await page.getByRole("heading", { name: "CAUTI rate by month of 4N" }).waitFor();
    expect(new URL(page.url()).search).toBe("?from=2025-12&to=2026-11&ward=4N");
    await page.getByRole("button", { name: "Compare the two" }).click();
    await page.getByText("The device utilization ratio of 3E (2025-12 to 2026-11) is 0.18 times that of 4N").waitFor();
    await page.getByText("of twenty tests of units that do not differ, about one").waitFor();
    expect(new URL(page.url()).searchParams.get("secondTo")).toBe(month.parse("2026-11"));
    await page.reload();
    await page.getByText("is 0.18 times that of 4N").waitFor();
  });
});
