import { spawn } from "node:child_process";
import { isAbsolute } from "node:path";
import { fileURLToPath } from "node:url";
import { ensureProgramBuilt, program } from "../build-program.mjs";

/** A server in a process of its own, so that what is measured does not share its time with who measures. */
export interface ChildServer {
  readonly base: string;
  stop(): Promise<void>;
}

/** The service itself on a database. */
export async function startService(databaseUrl: string): Promise<ChildServer> {
  await ensureProgramBuilt();
  return start([program, "serve", "--empty"], settingsOf(databaseUrl));
}

/** The service with the demo hospital, loaded into a database of its own. */
export async function startDemo(databaseUrl: string): Promise<ChildServer> {
  await ensureProgramBuilt();
  return start([program, "serve"], settingsOf(databaseUrl));
}

function settingsOf(databaseUrl: string): Record<string, string> {
  return { DWELL_DATABASE_URL: databaseUrl, DWELL_PORT: "0", DWELL_LOG_LEVEL: "error" };
}

/** A bare route that answers with the bytes of a file. */
export function startBareRoute(file: string): Promise<ChildServer> {
  return start(["./bare-route.ts", file], {});
}

async function start(
  [script = "", ...args]: readonly string[],
  settings: Record<string, string>,
): Promise<ChildServer> {
  const path = isAbsolute(script) ? script : fileURLToPath(new URL(script, import.meta.url));
  const child = spawn(process.execPath, ["--import", "tsx", path, ...args], {
    env: { ...process.env, ...settings },
    stdio: ["ignore", "pipe", "inherit"],
  });
  const gone = new Promise<void>((resolve) => child.once("close", () => resolve()));
  const base = await new Promise<string>((resolve, reject) => {
    child.stdout.on("data", (chunk: Buffer) => {
      const address = /http:\/\/\S+/.exec(chunk.toString())?.[0];
      if (address) resolve(address);
    });
    child.once("close", (code) => reject(new Error(`${script} ended with ${code}`)));
  });
  return {
    base,
    stop: () => {
      child.kill("SIGTERM");
      return gone;
    },
  };
}
