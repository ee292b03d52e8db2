import type { Store } from "../usecases/act.ts";
import { resumeImports } from "../usecases/imports/resume-imports.ts";
import { watchSignedMonths } from "../usecases/months/watch-signed-months.ts";
import type { CommandContext } from "./command.ts";

/**
 * Runs work on the database of the settings: brought up to date, owned by this process, broken-off imports finished.
 * Everything is given back afterwards, whatever happens.
 */
export async function withDatabase<T>(
  { config, clock, err, databases }: CommandContext,
  work: (store: Store) => Promise<T>,
): Promise<T> {
  await databases.migrate(config.databaseUrl);
  const owned = databases.own(config.databaseUrl);
  try {
    const store = watchSignedMonths(databases.open(config.databaseUrl));
    try {
      for (const result of await resumeImports({ store, now: clock() }))
        err(`An import that had broken off was ${result.state === "applied" ? "finished" : "dropped"}.\n`);
      return await work(store);
    } finally {
      await store.close();
    }
  } finally {
    owned.release();
  }
}
