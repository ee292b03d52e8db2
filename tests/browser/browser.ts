import { join } from "node:path";
import { type BrowserContext, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { ensureWebBuilt } from "../../scripts/build-web.mjs";
import { root } from "../../scripts/project.mjs";
import { buildApp } from "../../src/http/app.ts";
import { listenLocally } from "../../src/http/listen.ts";
import { localPrincipal } from "../../src/http/principal.ts";
import { freshSqlite } from "../databases/databases.ts";
import { type AlderBay, fillAlderBay, lookedAt } from "../http/alder-bay.ts";

const flags = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** A real server with Alder Bay Hospital, and a real browser with an empty profile. */
export interface Served {
  readonly address: string;
  readonly hospital: AlderBay;
  /** A new tab as one of the hospital's people; with settings of its own when given. */
  tab(options?: BrowserContextOptions & { person?: keyof AlderBay["people"] }): Promise<Page>;
  close(): Promise<void>;
}

/** Builds the page when it is not up to date, serves it and opens a browser. */
export async function serveAlderBay(): Promise<Served> {
  await ensureWebBuilt();
  const database = await freshSqlite();
  const hospital = await fillAlderBay(database.url);
  const { store } = hospital;
  const app = await buildApp({
    store,
    clock: () => lookedAt,
    principalOf: localPrincipal({ store, demo: true }),
    version: "0.0.0",
    staticFolder: join(root, "dist/web"),
  });
  const address = await listenLocally(app, 0);
  const executablePath = process.env.CHROMIUM_PATH ?? "/usr/bin/chromium";
  const browser = await chromium.launch({ executablePath, args: flags, headless: true });
  const contexts: BrowserContext[] = [];
  return {
    address,
    hospital,
    tab: async ({ person = "prevention", ...options } = {}) => {
      const extraHTTPHeaders = { "x-demo-person": String(hospital.people[person]) };
      const context = await browser.newContext({ baseURL: address, locale: "en-US", extraHTTPHeaders, ...options });
      contexts.push(context);
      return context.newPage();
    },
    close: async () => {
      for (const context of contexts) await context.close();
      await browser.close();
      await app.close();
      await store.close();
      await database.drop();
    },
  };
}
