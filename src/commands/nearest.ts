import { editDistance } from "../domain/criteria/edit-distance.ts";

/** The name that was probably meant: the nearest within two letters, or null. */
export function nearestOf(given: string, names: readonly string[]): string | null {
  const [nearest] = names
    .map((name) => ({ name, distance: editDistance(given, name) }))
    .filter(({ distance }) => distance <= 2)
    .sort((a, b) => a.distance - b.distance);
  return nearest?.name ?? null;
}
