import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { endpoints } from "../shared/api/index.ts";
import { call } from "../shared/call.ts";
import type { Role } from "../shared/vocabulary.ts";
import { startDemo } from "./bench/child-server.ts";
import { ensureWebBuilt } from "./build-web.mjs";
import { ensureChromium } from "./chromium.mjs";
import { root } from "./project.mjs";

/** A picture of the tour: whose eyes, where, and what is done before it is taken. */
interface Stop {
  readonly name: string;
  readonly role: Role;
  readonly open: (page: Page, at: Places) => Promise<unknown>;
}

/** Places of the demo hospital that the tour goes to. */
interface Places {
  readonly wardId: number;
  readonly month: string;
}

const stops: readonly Stop[] = [
  {
    name: "wards-now",
    role: "bedside",
    open: async (page) => {
      await page.goto("/");
      await page
        .getByRole("link", { name: /^Round of/ })
        .first()
        .waitFor();
    },
  },
  {
    name: "round",
    role: "bedside",
    open: async (page, { wardId }) => {
      await page.goto(`/wards/${wardId}/round`);
      await page
        .getByRole("button", { name: /^Still needed/ })
        .first()
        .click();
      await page.getByText(/^Recorded at/).waitFor();
    },
  },
  {
    name: "insertion",
    role: "bedside",
    open: async (page, { wardId }) => {
      await page.goto(`/wards/${wardId}/patients`);
      await page.getByRole("link", { name: "Record insertion" }).first().click();
      await page.getByText("Step 1 of 6").waitFor();
    },
  },
  {
    name: "story",
    role: "prevention",
    open: async (page, { wardId }) => {
      await page.goto(`/wards/${wardId}/round`);
      await page.getByRole("link", { name: "Catheter history" }).nth(1).click();
      await page.getByRole("img", { name: /Days of the catheter/ }).waitFor();
    },
  },
  {
    name: "month",
    role: "prevention",
    open: async (page, { month }) => {
      await page.goto(`/months/${month}`);
      await page
        .getByRole("button", { name: /catheter-days of/ })
        .nth(2)
        .click();
      await page.getByText(/^Unit days of/).waitFor();
    },
  },
  {
    name: "case",
    role: "prevention",
    open: async (page) => {
      await page.goto("/cases");
      await page
        .getByRole("article")
        .filter({ hasText: "SUTI 1a" })
        .getByRole("link", { name: /urine of/ })
        .first()
        .click();
      await page.getByRole("heading", { name: "Its days" }).waitFor();
      await page.getByRole("heading", { name: "Its days" }).evaluate((heading) => heading.scrollIntoView());
    },
  },
];

/** Takes the pictures of README.md's tour again, of a demo hospital that is loaded for them. */
async function takeTour(): Promise<void> {
  await ensureWebBuilt();
  const folder = mkdtempSync(join(tmpdir(), "dwell-tour-"));
  const service = await startDemo(join(folder, "demo.sqlite"));
  const browser = await chromium.launch({ executablePath: await ensureChromium(), args: ["--no-sandbox"] });
  try {
    mkdirSync(join(root, "docs/tour"), { recursive: true });
    for (const stop of stops) await takePicture(browser, service.base, stop);
  } finally {
    await browser.close();
    await service.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function takePicture(browser: Browser, base: string, { name, role, open }: Stop): Promise<void> {
  const { people } = await call(endpoints.listPeople, {}, { base });
  const person = people.find(({ roles }) => roles.includes(role));
  if (!person) throw new Error(`Nobody in the demo is ${role}`);
  const headers = { "x-demo-person": String(person.personId) };
  const { wards } = await call(endpoints.readWardsNow, {}, { base, headers });
  const ward = [...wards].sort((a, b) => (b.overdue ?? 0) - (a.overdue ?? 0))[0];
  if (!ward) throw new Error(`${person.name} has no ward`);
  // The facility's own day: a machine in another zone can already be in the next month.
  const { today } = await call(endpoints.readFacility, {}, { base, headers });
  const context = await browser.newContext({
    ...{ baseURL: base, locale: "en-US", viewport: { width: 1100, height: 780 } },
    ...{ colorScheme: "light", extraHTTPHeaders: headers },
  });
  await context.addInitScript((id) => localStorage.setItem("dwell-demo-person", id), String(person.personId));
  const page = await context.newPage();
  await open(page, { wardId: ward.wardId, month: today.slice(0, 7) });
  await page.screenshot({ path: join(root, `docs/tour/${name}.png`) });
  await context.close();
}

await takeTour();
