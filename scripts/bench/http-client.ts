import { Agent, request } from "node:http";

/** One request of a bench. */
export interface BenchRequest {
  readonly method: "GET" | "POST";
  readonly path: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
}

/** What clients that ask one after another, so many at once, were answered within. */
export interface Latencies {
  readonly medianS: number;
  readonly p95S: number;
  readonly longestS: number;
  readonly perSecond: number;
  /** The bytes of the last answer. */
  readonly bytes: Buffer;
}

/** Sends requests to a server from so many clients, each waiting for its answer; throws for one that is not 200. */
export async function measureHttp(
  base: string,
  { clients, count }: { clients: number; count: number },
  make: (i: number) => BenchRequest,
): Promise<Latencies> {
  const agent = new Agent({ keepAlive: true, maxSockets: clients });
  const took: number[] = [];
  let next = 0;
  let bytes: Buffer = Buffer.alloc(0);
  const client = async () => {
    for (let i = next++; i < count; i = next++) {
      const began = performance.now();
      bytes = await send(base, agent, make(i));
      took.push((performance.now() - began) / 1000);
    }
  };
  const began = performance.now();
  await Promise.all(Array.from({ length: clients }, client));
  const seconds = (performance.now() - began) / 1000;
  agent.destroy();
  return { ...spread(took), perSecond: count / seconds, bytes };
}

/** The median, the 95th percentile and the longest. */
export function spread(took: number[]): { medianS: number; p95S: number; longestS: number } {
  took.sort((a, b) => a - b);
  const at = (share: number) => took[Math.min(took.length - 1, Math.floor(took.length * share))] ?? 0;
  return { medianS: at(0.5), p95S: at(0.95), longestS: at(1) };
}

function send(base: string, agent: Agent, { method, path, headers = {}, body }: BenchRequest): Promise<Buffer> {
  const json =
    body === undefined ? {} : { "content-type": "application/json", "content-length": Buffer.byteLength(body) };
  return new Promise((resolve, reject) => {
    const sent = request(base + path, { method, agent, headers: { ...json, ...headers } }, (response) => {
      const parts: Buffer[] = [];
      response.on("data", (part: Buffer) => parts.push(part));
      response.on("end", () => {
        const bytes = Buffer.concat(parts);
        if (response.statusCode === 200) resolve(bytes);
        else
          reject(new Error(`${method} ${path} was answered ${response.statusCode}: ${bytes.toString().slice(0, 300)}`));
      });
    });
    sent.on("error", reject);
    sent.end(body);
  });
}
