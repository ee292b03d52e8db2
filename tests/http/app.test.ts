import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import Database from "better-sqlite3";
import { afterEach, describe, expect, it } from "vitest";
import { safeLogger } from "../../src/http/logger.ts";
import { freshSqlite } from "../databases/databases.ts";
import { type Door, openDoor } from "./door.ts";

let door: Door | undefined;
let folder: string | undefined;

afterEach(async () => {
  await door?.close();
  if (folder !== undefined) rmSync(folder, { recursive: true, force: true });
  door = undefined;
  folder = undefined;
});

describe("the app", () => {
  it("tells whoever watches it that it runs, whoever asks", async () => {
    door = await openDoor(await freshSqlite());
    const response = await door.app.inject({ url: "/health", remoteAddress: "10.0.0.7" });
    expect([response.statusCode, response.json()]).toEqual([200, { status: "ok", version: "1.2.3" }]);
  });

  it("answers a fault of the program with 500 and says nothing of SQL, paths or the program, but logs its place", async () => {
    const lines: string[] = [];
    const database = await freshSqlite();
    door = await openDoor(database, {
      logger: safeLogger({ level: "info", stream: { write: (l) => void lines.push(l) } }),
    });
    const raw = new Database(database.url);
    raw.exec("ALTER TABLE ward RENAME TO gone");
    raw.close();
    const response = await door.get("/api/v1/wards").expect(500);
    expect(response.body).toMatchObject({ code: "internal-error", instance: response.headers["x-request-id"] });
    expect(response.text).not.toMatch(/select|prisma|sqlite|\/src\/|node_modules|\bat \b.*:\d+/i);
    const [failure] = lines.map((line) => JSON.parse(line)).filter(({ msg }) => msg === "a request failed");
    expect(failure).toMatchObject({ reqId: response.headers["x-request-id"] });
    expect(failure.err.at.length).toBeGreaterThan(0);
  });

  it("sends headers that let a page load nothing from elsewhere, and keeps no answer", async () => {
    door = await openDoor(await freshSqlite());
    for (const path of ["/api/v1/me", "/health", "/docs", "/nothing"]) {
      const { headers } = await door.get(path);
      const policy = String(headers["content-security-policy"]);
      expect(policy).toContain("default-src 'none'");
      expect(policy).not.toMatch(/unsafe|https?:|\*/);
      expect(headers).toMatchObject({
        "x-content-type-options": "nosniff",
        "x-frame-options": "DENY",
        "referrer-policy": "no-referrer",
        "cache-control": "no-store",
      });
      expect(headers["x-powered-by"]).toBeUndefined();
      expect(headers["access-control-allow-origin"]).toBeUndefined();
    }
  });

  it("gives every request a number of its own", async () => {
    door = await openDoor(await freshSqlite());
    const numbers = [await door.get("/health"), await door.get("/health"), await door.get("/nothing")];
    expect(new Set(numbers.map(({ headers }) => headers["x-request-id"])).size).toBe(3);
  });

  it("hands out the page at every address of a page, and files only where there are files", async () => {
    folder = mkdtempSync(join(tmpdir(), "dwell-page-"));
    mkdirSync(join(folder, "assets"));
    writeFileSync(join(folder, "index.html"), "<title>page</title>");
    writeFileSync(join(folder, "assets/main-1a2b3c4d.js"), "1;");
    writeFileSync(join(folder, "assets/main-1a2b3c4d.js.gz"), gzipSync("1;"));
    door = await openDoor(await freshSqlite(), { staticFolder: folder });
    for (const path of ["/", "/months/2026-11", "/anything"]) {
      const response = await door.get(path).expect(200);
      expect([response.text, response.headers["cache-control"]]).toEqual(["<title>page</title>", "no-cache"]);
    }
    for (const encoding of ["gzip", "identity"]) {
      const script = await door.get("/assets/main-1a2b3c4d.js").set("accept-encoding", encoding).expect(200);
      expect(script.headers["cache-control"]).toContain("immutable");
      expect([script.headers["content-encoding"] ?? "identity", script.text]).toEqual([encoding, "1;"]);
    }
    for (const path of [
      "/assets/old-0000.js",
      "/index.php",
      "/../package.json",
      "/..%2f..%2fpackage.json",
      "/api/v1/x",
    ])
      expect((await door.get(path)).status).toBeGreaterThanOrEqual(400);
  });
});
