import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { root, runScript } from "./project.mjs";
import { ensureSetup } from "./setup.mjs";

/** `npm run bench [-- ARGUMENT…]`: sets the project up where needed, then is scripts/bench/main.ts. */
await runScript(async () => {
  await ensureSetup({ quiet: true });
  const { register } = await import("tsx/esm/api");
  register({ tsconfig: join(root, "tsconfig.json") });
  await import(pathToFileURL(join(root, "scripts/bench/main.ts")).href);
});
