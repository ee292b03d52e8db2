import { afterAll, beforeAll } from "vitest";
import { openStore } from "../../src/store/open-store.ts";
import type { Store } from "../../src/store/store.ts";
import type { TestDatabase } from "./databases.ts";

/** One migrated database and its store for all tests of a group; each test sets up a hospital of its own in it. */
export interface SharedStore {
  readonly store: Store;
  readonly url: string;
}

/** Registers opening and closing with the test runner; what it returns may be read inside tests. */
export function sharedStore(fresh: () => Promise<TestDatabase>): SharedStore {
  let open: { database: TestDatabase; store: Store } | undefined;
  beforeAll(async () => {
    const database = await fresh();
    open = { database, store: openStore(database.url) };
  });
  afterAll(async () => {
    await open?.store.close();
    await open?.database.drop();
  });
  const opened = () => {
    if (!open) throw new Error("the store is open inside tests only");
    return open;
  };
  return {
    get store() {
      return opened().store;
    },
    get url() {
      return opened().database.url;
    },
  };
}
