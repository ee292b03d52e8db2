import { join } from "node:path";
import { type BrowserContext, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { ensureWebBuilt } from "../../scripts/build-web.mjs";
import { root } from "../../scripts/project.mjs";
import { buildApp } from "../../src/http/app.ts";
import { listenLocally } from "../../src/http/listen.ts";
import { localPrincipal } from "../../src/http/principal.ts";
import { sealAudit } from "../../src/usecases/audit/seal-audit.ts";
import { watchSignedMonths } from "../../src/usecases/months/watch-signed-months.ts";
import { freshSqlite } from "../databases/databases.ts";
import { type AlderBay, fillAlderBay, lookedAt } from "../http/alder-bay.ts";
import { type Desk, deskAt } from "../http/desk.ts";

const flags = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** Where the picture of a page or state at a width is kept, to be looked at by people. */
export function pictureOf(name: string, width: number): string {
  return join(root, "dist/pictures", `${name.replaceAll(/\W+/g, "-")}-${width}.png`);
}

/** A real server with Alder Bay Hospital, and a real browser with an empty profile. */
export interface Served {
  readonly address: string;
  /** Asks the same server as one of the hospital's people, as a program would. */
  readonly desk: Desk;
  readonly hospital: AlderBay;
  /** Gives what was recorded its place in the list of changes, as the service does every half second. */
  seal(): Promise<unknown>;
  /** A new tab as one of the hospital's people; with settings of its own when given. */
  tab(options?: BrowserContextOptions & { person?: keyof AlderBay["people"] }): Promise<Page>;
  close(): Promise<void>;
}

/** Builds the page when it is not up to date, serves it and opens a browser. */
export async function serveAlderBay(): Promise<Served> {
  await ensureWebBuilt();
  const database = await freshSqlite();
  const hospital = await fillAlderBay(database.url);
  // As the program opens it.
  const store = watchSignedMonths(hospital.store);
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
    seal: () => sealAudit(store),
    desk: deskAt({ base: address, hospital, close: async () => {} }),
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
