import { pathToFileURL } from "node:url";
import { ensureProgramBuilt, program } from "./build-program.mjs";
import { ensureWebBuilt } from "./build-web.mjs";
import { runScript } from "./project.mjs";
import { ensureSetup } from "./setup.mjs";

/**
 * `node scripts/run.mjs COMMAND [ARGUMENT…]`: sets the project up and builds it where needed, then is the built program
 * with that command. It runs in this same process, so exit code, signals and the three streams are the program's own,
 * and relative paths among the arguments are read from the folder the person works in.
 */
await runScript(async () => {
  const [command] = process.argv.slice(2);
  await ensureSetup({ quiet: command !== "serve" });
  if (command === "serve") await ensureWebBuilt();
  await ensureProgramBuilt();
  process.setSourceMapsEnabled(true);
  process.argv[1] = program;
  await import(pathToFileURL(program).href);
});
