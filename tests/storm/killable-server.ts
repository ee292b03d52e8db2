import { type ChildProcess, spawn } from "node:child_process";
import { ensureProgramBuilt, program } from "../../scripts/build-program.mjs";

/** The service in a process of its own. */
export interface Service {
  readonly base: string;
  /** How long it took until it answered, in milliseconds. */
  readonly readyAfterMs: number;
  /** Ends it at once, as a power cut would; resolves when the process is gone. */
  kill(): Promise<void>;
  /** Asks it to end. */
  stop(): Promise<void>;
}

/** Starts the service on a database and waits until it is healthy. */
export async function startService(databaseUrl: string): Promise<Service> {
  await ensureProgramBuilt();
  const began = performance.now();
  const child = spawn(process.execPath, [program, "serve", "--empty"], {
    env: {
      ...process.env,
      ...{ DWELL_DATABASE_URL: databaseUrl, DWELL_PORT: "0", DWELL_LOG_LEVEL: "error" },
      ...{ DWELL_ZONE: "America/New_York", DWELL_FACILITY_NAME: "Alder Bay Hospital" },
    },
    stdio: ["ignore", "pipe", "pipe"],
  });
  const base = await addressOf(child);
  const health = await fetch(`${base}/health`);
  if (!health.ok) throw new Error(`the service is not healthy: ${health.status}`);
  const gone = new Promise<void>((resolve) => child.once("close", () => resolve()));
  const end = (signal: NodeJS.Signals) => () => {
    child.kill(signal);
    return gone;
  };
  return { base, readyAfterMs: performance.now() - began, kill: end("SIGKILL"), stop: end("SIGTERM") };
}

function addressOf(child: ChildProcess): Promise<string> {
  let said = "";
  return new Promise((resolve, reject) => {
    child.stderr?.on("data", (chunk: Buffer) => {
      said += chunk.toString();
    });
    child.stdout?.on("data", (chunk: Buffer) => {
      const [address] = /http:\/\/\S+/.exec(chunk.toString()) ?? [];
      if (address) resolve(address);
    });
    child.once("close", (code) => reject(new Error(`the service ended with ${code}: ${said}`)));
  });
}
