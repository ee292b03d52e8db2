import { type Command, exitCodes } from "./command.ts";
import { readOptions } from "./read-options.ts";

/** How the command is called. */
export const migrateUsage = "npm run migrate";

/** Brings the database of the settings up to date and says what was applied. */
export const migrate: Command = async ({ args, config, out, databases }) => {
  readOptions(args, {});
  const applied = await databases.migrate(config.databaseUrl);
  await out(applied.length === 0 ? "The database is up to date.\n" : `Applied: ${applied.join(", ")}.\n`);
  return exitCodes.well;
};
