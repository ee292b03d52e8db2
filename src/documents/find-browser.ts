import { existsSync } from "node:fs";

const usualPlaces = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome-stable",
  "/usr/bin/google-chrome",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

/** The browser that prints: the one that is named, else one where they usually are; null when there is none. */
export function findBrowser(named: string | null): string | null {
  if (named !== null) return existsSync(named) ? named : null;
  return usualPlaces.find((path) => existsSync(path)) ?? null;
}
