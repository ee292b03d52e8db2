import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { ensureWebBuilt } from "./build-web.mjs";
import { root, runScript } from "./project.mjs";
import { ensureSetup } from "./setup.mjs";

/**
 * `node scripts/run.mjs COMMAND [ARGUMENT…]`: sets the project up where needed, then is src/main.ts with that command.
 * It runs in this same process, so exit code, signals and the three streams are main.ts's own,
 * and relative paths among the arguments are read from the folder the person stands in.
 */
await runScript(async () => {
  const [command] = process.argv.slice(2);
  await ensureSetup({ quiet: command !== "serve" });
  if (command === "serve") await ensureWebBuilt();
  const { register } = await import("tsx/esm/api");
  register({ tsconfig: join(root, "tsconfig.json") });
  process.setSourceMapsEnabled(true);
  const main = join(root, "src/main.ts");
  process.argv[1] = main;
  await import(pathToFileURL(main).href);
});
