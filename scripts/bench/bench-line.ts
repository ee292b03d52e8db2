/** One measured figure beside what it is compared with in the same run. */
export interface BenchLine {
  /** What was measured. */
  readonly what: string;
  /** Ours, in seconds. */
  readonly oursS: number;
  /** What it is compared with. */
  readonly baseline: string;
  /** The baseline, in seconds. */
  readonly baselineS: number;
}

/** What a bench found: its lines, and what else a reader must know, a sentence each. */
export interface BenchResult {
  readonly lines: readonly BenchLine[];
  readonly notes: readonly string[];
}

/** The seconds that a piece of work took, with what it returned. */
export async function timed<T>(work: () => Promise<T> | T): Promise<{ seconds: number; value: T }> {
  const startMs = performance.now();
  const value = await work();
  return { seconds: (performance.now() - startMs) / 1000, value };
}

/** The median seconds of `times` runs of the same work, with what the last one returned; a first run does not count. */
export async function medianOf<T>(times: number, work: () => Promise<T> | T): Promise<{ seconds: number; value: T }> {
  let last = await timed(work);
  const runs: number[] = [];
  for (let i = 0; i < times; i++) {
    last = await timed(work);
    runs.push(last.seconds);
  }
  runs.sort((a, b) => a - b);
  return { seconds: runs[Math.floor(times / 2)] ?? last.seconds, value: last.value };
}

/** How long a file took to write, or that it was there. */
export function written(what: string, seconds: number): string {
  return seconds === 0 ? `${what}: there already.` : `${what}: written in ${seconds.toFixed(1)} s.`;
}
