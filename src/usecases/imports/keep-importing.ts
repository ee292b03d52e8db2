import type { Store } from "../../store/store.ts";
import type { Keeping } from "../jobs/keep-sealing.ts";
import { pause } from "../pause.ts";
import { type ReadFiles, workOnImports } from "./work-on-imports.ts";

/** Files wait no longer than about this before somebody begins to read them. */
const pauseMs = 400;
/** After so many failures an import is left for the next start of the program: trying on would fill the log. */
const triesMost = 3;

/** Thrown out of work that is to stop at its next step; what it did so far stands, and the next start goes on. */
class Stopped extends Error {}

/**
 * Works on imports again and again until it is stopped: reads and tries the files that were sent, and stores what was
 * decided. `stop` resolves when the step under way is over; the next start goes on from there.
 */
export function keepImporting(
  store: Store,
  { clock, onError, readFiles }: Keeping & { readonly readFiles: ReadFiles },
): { stop(): Promise<void> } {
  const ended = new AbortController();
  const failures = new Map<number, number>();
  const givenUp = new Set<number>();
  const failed = (importId: number, error: unknown): void => {
    if (error instanceof Stopped) return;
    const tries = (failures.get(importId) ?? 0) + 1;
    failures.set(importId, tries);
    if (tries >= triesMost) givenUp.add(importId);
    onError(error);
  };
  const onStep = (): void => {
    if (ended.signal.aborted) throw new Stopped("the work on imports was stopped");
  };
  const work = (async () => {
    while (!ended.signal.aborted) {
      await workOnImports({ store, now: clock(), readFiles, onStep, onError: failed, givenUp }).catch(onError);
      await pause(pauseMs, ended.signal);
    }
  })();
  return {
    stop: () => {
      ended.abort();
      return work;
    },
  };
}
