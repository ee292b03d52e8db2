import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { plainEnvironment, runChild } from "./child.mjs";
import { Obstacle, root, tell } from "./project.mjs";
import { digestOf, isStamped, writeStamp } from "./stamp.mjs";

/** The databases that the one schema serves, each with its own generated client. */
const providers = /** @type {const} */ (["sqlite", "postgresql"]);
const generated = join(root, "src/store/generated");
const stamp = join(generated, "stamp");
const prisma = join(root, "node_modules/prisma");

function clientsDigest() {
  const { version } = JSON.parse(readFileSync(join(prisma, "package.json"), "utf8"));
  return digestOf(["prisma/schema.prisma", "scripts/prisma-clients.mjs"], version);
}

/** True when both clients were generated from today's schema by today's Prisma. */
export function areClientsFresh() {
  return existsSync(prisma) && isStamped(stamp, clientsDigest());
}

/**
 * Generates both clients. Works without a network: see {@link generatorEnvironment}. They are made elsewhere and
 * then put in place, so that a program that starts meanwhile finds the old ones or the new ones.
 * @param {{ quiet: boolean }} options
 * @throws {Obstacle} Prisma refuses the schema; its own message is shown above the sentence
 */
export async function generateClients({ quiet }) {
  if (!quiet) tell("Generating the database clients.");
  const digest = clientsDigest();
  const folder = mkdtempSync(join(tmpdir(), "dwell-ledger-clients-"));
  try {
    const ended = await Promise.all(providers.map((provider) => generateClient(provider, join(folder, provider))));
    const failed = ended.filter(({ code }) => code !== 0);
    for (const { output } of failed) tell(output.trimEnd());
    if (failed.length > 0) throw new Obstacle("prisma generate failed; what it said stands above.");
    rmSync(generated, { recursive: true, force: true });
    for (const provider of providers) {
      cpSync(join(folder, provider, "client"), join(generated, provider), { recursive: true });
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  writeStamp(stamp, digest);
}

/**
 * @param {string} provider
 * @param {string} folder gets the stamped schema, and the client in `client`
 */
function generateClient(provider, folder) {
  const schema = join(folder, "schema.prisma");
  const text = readFileSync(join(root, "prisma/schema.prisma"), "utf8");
  mkdirSync(folder);
  writeFileSync(schema, stampSchema(text, { provider, output: join(folder, "client") }));
  const args = [join(prisma, "build/index.js"), "generate", "--schema", schema];
  return runChild(process.execPath, args, { env: generatorEnvironment() });
}

/**
 * The schema for one database: only the data source's provider and the client's folder change.
 * @param {string} text
 * @param {{ provider: string, output: string }} target
 */
export function stampSchema(text, { provider, output }) {
  const datasource = /(datasource\s+\w+\s*\{[^}]*?provider\s*=\s*)"[^"]*"/;
  const generator = /(generator\s+\w+\s*\{[^}]*?output\s*=\s*)"[^"]*"/;
  if (!datasource.test(text) || !generator.test(text)) {
    throw new Error("prisma/schema.prisma needs one datasource with a provider and one generator with an output");
  }
  return text
    .replace(datasource, (_, start) => `${start}${JSON.stringify(provider)}`)
    .replace(generator, (_, start) => `${start}${JSON.stringify(output)}`);
}

/**
 * Prisma's command line downloads a native engine that `generate` never runs. Naming any existing program
 * stops the download; one that always fails makes sure that a command which would need the engine fails too.
 * @returns {NodeJS.ProcessEnv}
 */
function generatorEnvironment() {
  const engine = existsSync("/bin/false") ? "/bin/false" : "/usr/bin/false";
  return {
    ...plainEnvironment(),
    PRISMA_SCHEMA_ENGINE_BINARY: engine,
    CHECKPOINT_DISABLE: "1",
    PRISMA_HIDE_UPDATE_MESSAGE: "1",
  };
}
