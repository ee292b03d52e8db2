import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Served, serveAlderBay } from "./browser.ts";

let served: Served;
beforeAll(async () => {
  served = await serveAlderBay();
}, 180_000);
afterAll(() => served?.close());

type Color = readonly [number, number, number];

/** Relative luminance, WCAG 2.2. */
function luminance(color: Color): number {
  const [r = 0, g = 0, b = 0] = color.map((part) => {
    const share = part / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast ratio, WCAG 2.2. */
function contrast(one: Color, other: Color): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

/** Each shown pair of colors: what it is, and its two colors as the browser computes them. */
async function pairs(page: Page): Promise<{ name: string; kind: string; colors: [Color, Color] }[]> {
  return page.locator("[data-pair]").evaluateAll((shown) =>
    shown.map((element) => {
      const read = (text: string) => (text.match(/\d+(\.\d+)?/g) ?? []).slice(0, 3).map(Number) as never;
      const style = getComputedStyle(element);
      const kind = element.getAttribute("data-pair") ?? "";
      const front = kind === "edge" ? style.borderTopColor : style.color;
      return { name: element.textContent ?? "", kind, colors: [read(front), read(style.backgroundColor)] };
    }),
  );
}

describe("the colors", () => {
  it("measure contrast as WCAG does: black on white 21, and #777 on white just under 4.5", () => {
    expect(contrast([0, 0, 0], [255, 255, 255])).toBe(21);
    // 4.48, the published near miss of the understanding document of criterion 1.4.3 (from memory).
    expect(contrast([0x77, 0x77, 0x77], [255, 255, 255])).toBeCloseTo(4.48, 2);
  });

  it.each(["light", "dark"] as const)(
    "have 4.5 : 1 for words and 3 : 1 for edges on every ground, %s",
    async (colorScheme) => {
      const page = await served.tab({ colorScheme });
      await page.goto("/style");
      await page.getByText("Another person changed it first").waitFor();
      const shown = await pairs(page);
      expect(shown.filter(({ kind }) => kind === "words").length).toBe(6 + 3 * 8);
      const weak = shown.flatMap(({ name, kind, colors }) => {
        const ratio = contrast(...colors);
        return ratio >= (kind === "edge" ? 3 : 4.5) ? [] : [`${name}: ${ratio.toFixed(2)}`];
      });
      expect(weak).toEqual([]);
    },
  );
});
