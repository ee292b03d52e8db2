import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { fillCultures } from "../http/full-cultures.ts";
import { fillImports } from "../http/full-imports.ts";
import { fillRound } from "../http/full-round.ts";
import { axeFindings } from "./axe.ts";
import { pictureOf, type Served, serveAlderBay } from "./browser.ts";
import { pagesOf, type ShownPage } from "./pages.ts";

let served: Served;
let pages: readonly ShownPage[];

beforeAll(async () => {
  served = await serveAlderBay();
  const beds = await fillRound(served.desk);
  const caseId = await fillCultures(served.desk, beds[10].patientId);
  pages = pagesOf(served.hospital, beds, await fillImports(served.desk), caseId);
}, 180_000);

afterAll(() => served?.close());

/** Opens every page in turn; `look` says what is wrong with it. Answers with what was said of each page. */
async function lookAtAll(look: (page: Page, shown: ShownPage) => Promise<unknown>): Promise<Record<string, unknown>> {
  const page = await served.tab();
  const said: Record<string, unknown> = {};
  for (const shown of pages) {
    await page.goto(shown.path);
    await page.getByText(shown.ready).first().waitFor();
    said[shown.name] = await look(page, shown);
  }
  await page.close();
  return said;
}

const nothing = () => Object.fromEntries(pages.map(({ name }) => [name, []]));

/** What does not fit a window of this width: sideways scrolling, also with text of twice the size, and small targets. */
async function misfits(page: Page, width: number): Promise<string[]> {
  await page.setViewportSize({ width, height: 900 });
  const acrossWith = (fontSize: string) =>
    page.evaluate((size) => {
      document.documentElement.style.fontSize = size;
      return document.documentElement.scrollWidth;
    }, fontSize);
  // 320 px are 1280 px at a zoom of 400 %; text of twice the size comes on top at the others.
  const twice = width > 320 ? await acrossWith("200%") : 0;
  const across = await acrossWith("");
  const tooWide = across > width ? [`is ${across} px wide at ${width}`] : [];
  const largeText = twice > width ? [`with large text is ${twice} px wide at ${width}`] : [];
  return [...tooWide, ...largeText, ...(await smallTargets(page)).map((target) => `at ${width} small: ${target}`)];
}

/** Controls that are smaller than 44 px each way; words in a sentence may be smaller, and a box within its label. */
async function smallTargets(page: Page): Promise<string[]> {
  return page.locator("button, a, select, summary, input, textarea, .choice").evaluateAll((controls) =>
    controls.flatMap((control) => {
      const isHidden = !control.checkVisibility() || control.matches(".skip, button.term, p a:not(.step, .button)");
      const { width, height } = control.closest(".choice")?.getBoundingClientRect() ?? control.getBoundingClientRect();
      return isHidden || (width >= 44 && height >= 44) ? [] : [control.outerHTML.slice(0, 120)];
    }),
  );
}

describe("every page", () => {
  it("has nothing for axe to find, one main heading and a title, fits 1280, 820 and 320 px with targets of 44 px", async () => {
    const found = await lookAtAll(async (page, { name }) => {
      expect(await page.locator("h1").count()).toBe(1);
      expect(await page.title()).toMatch(/. – Dwell Ledger$/);
      const said: unknown[] = await axeFindings(page);
      for (const width of [1280, 820, 320]) {
        said.push(...(await misfits(page, width)));
        if (width > 320) await page.screenshot({ path: pictureOf(name, width), fullPage: true });
      }
      await page.setViewportSize({ width: 1280, height: 900 });
      return said;
    });
    expect(found).toEqual(nothing());
  }, 480_000);

  it("speaks from the catalogue alone: in the pseudo-language no text is without accents", async () => {
    const page = await served.tab({ viewport: { width: 820, height: 900 } });
    const found: Record<string, unknown> = {};
    for (const { name, path } of pages) {
      await page.goto(`${path}${path.includes("?") ? "&" : "?"}language=en-XA`);
      await page.locator("main").getByText("[").first().waitFor();
      await expect.poll(() => page.locator(".waiting:not([data-sample] *)").count()).toBe(0);
      found[name] = await plainTexts(page);
    }
    expect(found).toEqual(nothing());
  }, 240_000);
});

/** Texts of several letters that neither come from the server or a person, nor are names, figures and dates. */
function plainTexts(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const found: string[] = [];
    while (walker.nextNode()) {
      const node = walker.currentNode;
      const text = (node.textContent ?? "").trim();
      const parent = node.parentElement;
      if (!parent?.checkVisibility() || parent.closest("[data-said], option, noscript, script")) continue;
      // Months are written as the language of the page writes them, and a generated language has no calendar.
      if (/^[A-Z][a-z]+ \d{4}$/.test(text)) continue;
      if (/[a-z]{4}/i.test(text) && !text.includes("[") && !/[åçéîñöûý~]/i.test(text)) found.push(text);
    }
    return found;
  });
}
