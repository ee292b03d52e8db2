import { chromium } from "playwright-core";
import type { ReportDocument } from "../../shared/report-document.ts";
import { documentHtml } from "./document-html.ts";

const flags = [
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
];

/** A month of hundreds of wards has hundreds of pages, and the machine may have other work. */
const longestMs = 300_000;

/** A document printed by a real browser, with its structure for screen readers. The page runs no scripts and loads nothing. */
export async function browserPdf(document: ReportDocument, executablePath: string): Promise<Uint8Array> {
  // The browser's own walls need a user other than root.
  const args = process.getuid?.() === 0 ? [...flags, "--no-sandbox"] : flags;
  const browser = await chromium.launch({ executablePath, args, headless: true });
  try {
    const context = await browser.newContext({ javaScriptEnabled: false, offline: true });
    const page = await context.newPage();
    page.setDefaultTimeout(longestMs);
    await page.setContent(documentHtml(document));
    const bytes = await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged: true, outline: true });
    return new Uint8Array(bytes);
  } finally {
    await browser.close();
  }
}
