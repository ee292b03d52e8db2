import { expect, it } from "vitest";
import { findBrowser } from "../../src/documents/find-browser.ts";

it("the browser that prints is the one that is named where it exists, and none where it does not", () => {
  expect(findBrowser(process.execPath)).toBe(process.execPath);
  expect(findBrowser("/no/such/browser")).toBeNull();
});
