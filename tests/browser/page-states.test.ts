import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { axeFindings } from "./axe.ts";
import { type Served, serveAlderBay } from "./browser.ts";

let served: Served;

beforeAll(async () => {
  served = await serveAlderBay();
}, 180_000);

afterAll(() => served?.close());

/** What the browser complains of: content that the security headers forbid, scripts that fail. */
function complaintsOf(page: Page): string[] {
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  return complaints;
}

describe("what the month page says when there are no figures to show", () => {
  it("says in words that it is loading", async () => {
    const page = await served.tab();
    let release = (): void => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route("**/api/v1/months/*", async (route) => {
      await held;
      await route.continue();
    });
    await page.goto("/months/2026-11");
    await page.getByRole("status").getByText("Loading the figures of November 2026…").waitFor();
    expect(await axeFindings(page)).toEqual([]);
    release();
    await page.getByRole("row", { name: /^All units/ }).waitFor();
  });

  it("says that the server does not answer, and tries again when asked", async () => {
    const page = await served.tab();
    await page.route("**/api/v1/months/*", (route) => route.abort());
    await page.goto("/months/2026-11");
    await page.getByRole("alert").getByText("The server does not answer.").waitFor();
    expect(await axeFindings(page)).toEqual([]);
    await page.unroute("**/api/v1/months/*");
    await page.getByRole("button", { name: "Try again" }).click();
    await page.getByRole("row", { name: /^All units/ }).waitFor();
  });

  it("says that a role may not see the figures", async () => {
    const page = await served.tab({ person: "administrator" });
    await page.goto("/months/2026-11");
    await page.getByRole("heading", { name: "Your role does not open this page" }).waitFor();
    await page.getByText("It is for people who may do this: see patient-days and catheter-days.").waitFor();
    await page.getByText("Ask an administrator whether your role should be another one.").waitFor();
    expect(await page.getByRole("table").count()).toBe(0);
    expect(await axeFindings(page)).toEqual([]);
  });

  it("says that a month has not come yet", async () => {
    const page = await served.tab();
    await page.goto("/months/2026-12");
    await page.getByRole("alert").getByText("No census has been taken in this time yet").waitFor();
  });

  it("says that there is no such page", async () => {
    const page = await served.tab();
    for (const path of ["/months/2026-13", "/nowhere"]) {
      await page.goto(path);
      await page.getByRole("heading", { name: "There is no such page" }).waitFor();
    }
  });

  it("says without JavaScript where the figures can be had", async () => {
    const page = await served.tab({ javaScriptEnabled: false });
    await page.goto("/");
    expect(await page.locator("noscript p").textContent()).toContain("This page needs JavaScript");
    expect(await page.locator("noscript p").isVisible()).toBe(true);
    expect(await page.getByText("The page is on its way").isVisible()).toBe(true);
  });
});

describe("what a viewer's role shows on the month page", () => {
  it("opens a manager's figures down to ward days of their own ward, and to no patient", async () => {
    const page = await served.tab({ person: "manager" });
    await page.goto("/months/2026-11");
    await page.getByRole("row", { name: /^Your units 22 3 0\.14/ }).waitFor();
    expect(await page.getByText("4N").count()).toBe(0);
    await page.getByRole("button", { name: /utilization ratio of 3E/ }).click();
    await page.getByText("Your role shows unit days; it does not show patients.").waitFor();
    expect(await page.getByRole("button", { name: /show the patients/ }).count()).toBe(0);
  });
});

describe("pages under the security headers", () => {
  it("shows the month without a complaint of the browser", async () => {
    const page = await served.tab();
    const complaints = complaintsOf(page);
    await page.goto("/months/2026-11");
    await page.getByRole("row", { name: /^All units/ }).waitFor();
    expect(complaints).toEqual([]);
  });

  it("shows the page of the API with every endpoint, and tries one out", async () => {
    const page = await served.tab();
    const complaints = complaintsOf(page);
    const asked: string[] = [];
    page.on("request", (request) => asked.push(new URL(request.url()).origin));
    await page.goto("/docs");
    await page.getByRole("button", { name: "get /api/v1/facility", exact: false }).first().click();
    await page.getByRole("button", { name: "Execute" }).click();
    await page.getByText('"Alder Bay Hospital"').first().waitFor();
    // Of so many endpoints only those in sight are in the document.
    const shown = await page.evaluate(async () => {
      const ids = new Set<string>();
      for (let top = 0; top <= document.documentElement.scrollHeight; top += 300) {
        scrollTo(0, top);
        await new Promise((resolve) => setTimeout(resolve, 50));
        for (const { id } of document.querySelectorAll(".opblock")) ids.add(id);
      }
      return [...ids];
    });
    expect(shown).toHaveLength(Object.keys(endpoints).length);
    expect(complaints).toEqual([]);
    expect(new Set(asked.filter((origin) => origin !== "null"))).toEqual(new Set([served.address]));
  }, 120_000);
});
