import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { CommandContext, Databases } from "../../src/commands/command.ts";
import { withDatabase } from "../../src/commands/with-database.ts";
import { readConfig } from "../../src/config.ts";
import { addImport, setImportState } from "../../src/store/imports.ts";
import { openStore } from "../../src/store/open-store.ts";
import { freshSqlite, type TestDatabase } from "../databases/databases.ts";
import { openHospital } from "../databases/hospital.ts";

const now = Date.UTC(2026, 10, 25, 12);
let database: TestDatabase;
beforeAll(async () => {
  database = await freshSqlite();
});
afterAll(() => database.drop());

/** A context whose databases write down what is asked of them; `failing` says what goes wrong. */
function watched(failing: "migrate" | "own" | "open" | "none" = "none") {
  const steps: string[] = [];
  const step = (name: string) => {
    steps.push(name);
    if (name === failing) throw new Error(`${name} failed`);
  };
  const databases: Databases = {
    migrate: async () => {
      step("migrate");
      return [];
    },
    own: () => {
      step("own");
      return { release: () => step("release") };
    },
    open: (url) => {
      step("open");
      const store = openStore(url);
      return { ...store, close: () => store.close().then(() => step("close")) };
    },
  };
  let said = "";
  const context = {
    config: readConfig({ DWELL_DATABASE_URL: database.url }),
    clock: () => now,
    err: (text: string) => {
      said += text;
    },
    databases,
  } as unknown as CommandContext;
  return { context, steps, said: () => said };
}

describe("work on the database of the settings", () => {
  it("runs between opening and closing, and what it finds is handed back", async () => {
    const { context, steps, said } = watched();
    const found = await withDatabase(context, async (store) => {
      steps.push("work");
      return store.kind;
    });
    expect(found).toBe("sqlite");
    expect(steps).toEqual(["migrate", "own", "open", "work", "close", "release"]);
    expect(said()).toBe("");
  });

  it("closes and gives the database back when the work fails", async () => {
    const { context, steps } = watched();
    const work = () => Promise.reject(new Error("the work failed"));
    await expect(withDatabase(context, work)).rejects.toThrow("the work failed");
    expect(steps).toEqual(["migrate", "own", "open", "close", "release"]);
  });

  it.each([
    ["migrate", ["migrate"]],
    ["own", ["migrate", "own"]],
    ["open", ["migrate", "own", "open", "release"]],
  ] as const)("does not begin, and keeps nothing, when it cannot %s", async (failing, expected) => {
    const { context, steps } = watched(failing);
    const work = () => Promise.reject(new Error("the work began"));
    await expect(withDatabase(context, work)).rejects.toThrow(`${failing} failed`);
    expect(steps).toEqual(expected);
  });

  it("comes after imports that were broken off, and tells what became of them", async () => {
    const hospital = await openHospital(database.url, { now });
    const by = { ...hospital.at(now).actor, now };
    const ways = [[], ["checking"], ["checking", "applying"], ["checking", "applying", "applied"]] as const;
    for (const way of ways)
      await hospital.store.tx(async (tx) => {
        const id = await addImport(tx, by, { setAside: false, assumeInpatient: false, sourceId: null });
        for (const state of way) await setImportState(tx, id, state);
      });
    await hospital.store.close();
    const { context, said } = watched();
    await withDatabase(context, async () => undefined);
    expect(said()).toBe(
      [...["dropped", "dropped", "finished"].map((end) => `An import that had broken off was ${end}.`), ""].join("\n"),
    );
    const again = watched();
    await withDatabase(again.context, async () => undefined);
    expect(again.said()).toBe("");
  });
});
