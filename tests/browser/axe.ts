import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";

const plain = { colorScheme: "light", forcedColors: "none", reducedMotion: "no-preference" } as const;

/** The rules of level A and AA that colors can break. */
const colorRules = ["color-contrast", "link-in-text-block"] as const;

/** The settings of a person's device under which a page is looked at; color rules alone after the first. */
const looks = [
  { settings: plain, rules: "all" },
  { settings: { ...plain, colorScheme: "dark" }, rules: "color" },
  { settings: { ...plain, forcedColors: "active", reducedMotion: "reduce" }, rules: "color" },
] as const;

/**
 * What axe finds in a page as it stands: by all rules in light colors, and by those that colors can break in dark and in
 * forced colors. Each with the settings, the rule and the elements.
 */
export async function axeFindings(page: Page): Promise<unknown[]> {
  const found: unknown[] = [];
  for (const [i, { settings, rules }] of looks.entries()) {
    await page.emulateMedia(settings);
    // Only violations are worked out in full: what passes takes most of the time.
    const runOnly = rules === "all" ? {} : { runOnly: { type: "rule" as const, values: [...colorRules] } };
    // From the first look on axe stands in the page; to read it anew takes longer than the look itself.
    const source = i === 0 ? {} : { axeSource: "void 0" };
    const builder = new AxeBuilder({ page, ...source })
      .setLegacyMode()
      .options({ resultTypes: ["violations"], ...runOnly });
    const { violations } = await builder.analyze();
    found.push(...violations.map(({ id, nodes }) => [settings, id, nodes.map((node) => node.html)]));
  }
  await page.emulateMedia(plain);
  return found;
}
