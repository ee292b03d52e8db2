import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BrowserContext, type CDPSession, chromium, type Page } from "playwright-core";
import { migrate } from "../../src/store/migrate.ts";
import { ensureWebBuilt } from "../build-web.mjs";
import { ensureChromium } from "../chromium.mjs";
import type { BenchLine, BenchResult } from "./bench-line.ts";
import { startService } from "./child-server.ts";
import { fillWard } from "./full-ward.ts";

/** A slow network and a slow machine: 150 ms, 1.6 Mbit/s down and 0.75 up, a processor slowed down fourfold. */
const slow = { latencyMs: 150, downMbit: 1.6, upMbit: 0.75, processor: 4 };

/**
 * How soon the round stands on a slow device on a slow network: first visit and again, against an empty page of the same
 * service and device; and how long after a touch a review shows, at full speed, against the round trip of a bare question.
 */
export async function benchPages({ catheters }: { catheters: number }): Promise<BenchResult> {
  await ensureWebBuilt();
  const folder = mkdtempSync(join(tmpdir(), "dwell-bench-"));
  const file = join(folder, "ledger.sqlite");
  await migrate(file);
  const { wardId } = await fillWard(file, { now: Date.now(), patients: catheters });
  const service = await startService(file);
  const browser = await chromium.launch({ executablePath: await ensureChromium(), args: ["--no-sandbox"] });
  try {
    const address = `${service.base}/wards/${wardId}/round`;
    const empty = await loadsOf(await browser.newContext(), `${service.base}/terms`, "h1");
    const round = await loadsOf(await browser.newContext(), address, ".round-card");
    const shown = await reviewsShown(await browser.newContext(), address);
    const baseline = "page of terms, same device";
    const lines: BenchLine[] = [
      {
        what: `round of ${catheters}, first visit`,
        oursS: round.first.stands,
        baseline,
        baselineS: empty.first.stands,
      },
      { what: `round of ${catheters}, again`, oursS: round.again.stands, baseline, baselineS: empty.again.stands },
      { what: "review touched to shown", oursS: shown.review, baseline: "bare question", baselineS: shown.question },
    ];
    return { lines, notes: [pagesNote(round, shown)] };
  } finally {
    await browser.close();
    await service.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

function pagesNote({ first, again }: { first: Load; again: Load }, shown: { review: number }): string {
  const said = (name: string, seconds: number, most: number): string =>
    `${name} ${(seconds * 1000).toFixed(0)} ms (${seconds * 1000 <= most ? "within" : "OVER"} ${most} ms)`;
  const slowly = `under ${slow.latencyMs} ms, ${slow.downMbit} Mbit/s and a processor slowed ${slow.processor} times`;
  const largest = `${said("first visit", first.largest, 2500)}, ${said("again", again.largest, 1200)}`;
  const stands = `${said("first visit", first.stands, 2500)}, ${said("again", again.stands, 1200)}`;
  return `Pages ${slowly}: largest content as the browser tells it: ${largest}; the first catheter stands: ${stands}. At full speed ${said("a review shows after", shown.review, 100)}.`;
}

/** How soon a page was there, on the first visit and on the second of the same browser; medians of five. */
async function loadsOf(context: BrowserContext, address: string, ready: string) {
  const times: { first: Load; again: Load }[] = [];
  await context.addInitScript(markStands, ready);
  for (let run = 0; run < 5; run++) {
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    await session.send("Network.clearBrowserCache");
    await slowDown(session);
    times.push({
      first: await load(page, address),
      again: await load(page, address),
    });
    await page.close();
  }
  await context.close();
  const middle = (visit: "first" | "again"): Load => ({
    largest: median(times.map((time) => time[visit].largest)),
    stands: median(times.map((time) => time[visit].stands)),
  });
  return { first: middle("first"), again: middle("again") };
}

async function slowDown(session: CDPSession): Promise<void> {
  const bytes = (mbit: number): number => (mbit * 1_000_000) / 8;
  await session.send("Network.enable");
  await session.send("Network.emulateNetworkConditions", {
    ...{ offline: false, latency: slow.latencyMs },
    ...{ downloadThroughput: bytes(slow.downMbit), uploadThroughput: bytes(slow.upMbit) },
  });
  await session.send("Emulation.setCPUThrottlingRate", { rate: slow.processor });
}

/** Seconds until a page was there: the largest content as the browser tells it, and what was asked for itself. */
interface Load {
  readonly largest: number;
  readonly stands: number;
}

/**
 * Runs in the page: notes when what was asked for has been drawn. Asked from outside instead, a browser that is slowed down
 * spends a third of a second on the question.
 */
function markStands(ready: string): void {
  const watching = new MutationObserver(() => {
    if (!document.querySelector(ready)) return;
    watching.disconnect();
    requestAnimationFrame(() => setTimeout(() => performance.mark("stands")));
  });
  watching.observe(document, { childList: true, subtree: true });
}

async function load(page: Page, address: string): Promise<Load> {
  await page.goto("about:blank");
  await page.goto(address);
  await page.waitForFunction(() => performance.getEntriesByName("stands").length > 0, undefined, { polling: 250 });
  await page.waitForLoadState("networkidle");
  const stands = await page.evaluate(() => (performance.getEntriesByName("stands")[0]?.startTime ?? 0) / 1000);
  const largest = await page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        const watching = new PerformanceObserver((list) => resolve((list.getEntries().at(-1)?.startTime ?? 0) / 1000));
        watching.observe({ type: "largest-contentful-paint", buffered: true });
      }),
  );
  return { largest, stands };
}

/** Seconds from a touch on "keep" to the word on the card, and of a bare question to the service; medians. */
async function reviewsShown(context: BrowserContext, address: string) {
  const page = await context.newPage();
  await page.goto(address);
  const keep = page.getByRole("button", { name: /^Still needed/ });
  await keep.first().waitFor();
  const reviews: number[] = [];
  const questions: number[] = [];
  for (let run = 0; run < 15; run++) {
    reviews.push(
      await keep.first().evaluate(
        (button) =>
          new Promise<number>((resolve) => {
            const start = performance.now();
            const card = button.closest("li, article") ?? button;
            const watching = new MutationObserver(() => {
              if (!/Undo/.test(card.textContent ?? "")) return;
              watching.disconnect();
              requestAnimationFrame(() => resolve((performance.now() - start) / 1000));
            });
            watching.observe(document.body, { childList: true, subtree: true, characterData: true });
            (button as HTMLButtonElement).click();
          }),
      ),
    );
    questions.push(
      await page.evaluate(async () => {
        const start = performance.now();
        await (await fetch("/api/v1/facility")).text();
        return (performance.now() - start) / 1000;
      }),
    );
  }
  await context.close();
  return { review: median(reviews), question: median(questions) };
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}
