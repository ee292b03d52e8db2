import { Problem } from "../../shared/problems.ts";
import type { Entry } from "../domain/timeline/timeline.ts";

/**
 * Refuses `stale-version`, with the entry as it is by now, when another person changed it since it was read.
 * A door that carries no versions gives none.
 */
export function sameVersion(entry: Pick<Entry, "version">, seenVersion: number | undefined, current: object): void {
  if (seenVersion === undefined || seenVersion === entry.version) return;
  const detail = `Another person changed this since you read it: it is now version ${entry.version}.`;
  const problem = new Problem({ code: "stale-version", pointer: "", detail });
  problem.current = current;
  throw problem;
}
