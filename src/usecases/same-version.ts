import { Problem } from "../../shared/problems.ts";
import type { Entry } from "../domain/timeline/timeline.ts";

/**
 * Refuses `stale-version`, with the entry as it is by now, when somebody changed it since the person looked.
 * A door that carries no versions gives none.
 */
export function sameVersion(entry: Pick<Entry, "version">, seenVersion: number | undefined, current: object): void {
  if (seenVersion === undefined || seenVersion === entry.version) return;
  const detail = `Somebody changed this since you looked: it has version ${entry.version} by now.`;
  const problem = new Problem({ code: "stale-version", pointer: "", detail });
  problem.current = current;
  throw problem;
}
