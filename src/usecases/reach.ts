import type { Permission } from "../../shared/permissions.ts";
import type { Role } from "../../shared/vocabulary.ts";
import type { Actor } from "./act.ts";

/** Over which wards somebody may do something: only these, or all of the facility when left out. */
export interface Reach {
  readonly wardIds?: readonly number[];
}

type Extent = "facility" | "own-wards";

const everybody = {
  bedside: "facility",
  prevention: "facility",
  manager: "facility",
  administrator: "facility",
} as const;

/**
 * Which role may do what, and over which wards. A role that is not named may not. Managers see figures down to ward
 * days and no patients; administrators no clinical content; feeds send and read nothing.
 */
const grants: Readonly<Record<Permission, Partial<Record<Role, Extent>>>> = {
  "see-own-account": { ...everybody, feed: "facility" },
  "see-facility": everybody,
  "see-wards": { ...everybody, bedside: "own-wards", manager: "own-wards" },
  "see-counts": { bedside: "own-wards", prevention: "facility", manager: "own-wards" },
  // Whose wards are compared sees the figures of the others too: a funnel of one ward says nothing.
  "compare-wards": { prevention: "facility", manager: "facility" },
  "see-patients": { bedside: "own-wards", prevention: "facility" },
  "record-care": { bedside: "own-wards", prevention: "facility" },
  "judge-cases": { prevention: "facility" },
  "merge-patients": { prevention: "facility" },
  "count-by-hand": { bedside: "own-wards", prevention: "facility" },
  "see-policy": { ...everybody, bedside: "own-wards", manager: "own-wards" },
  "set-policy": { prevention: "facility", administrator: "facility" },
  "see-baselines": everybody,
  "set-baselines": { prevention: "facility", administrator: "facility" },
  "sign-month": { prevention: "facility" },
  "set-wards": { prevention: "facility", administrator: "facility" },
  // Whoever imports sees the lines that were refused, beside what is wrong with them.
  "import-records": { prevention: "facility", administrator: "facility" },
  "set-facility": { prevention: "facility", administrator: "facility" },
  "see-changes": { bedside: "own-wards", prevention: "facility" },
  "see-audit": { prevention: "facility", administrator: "facility" },
};

/** Over which wards a person may do this, by the widest of their roles; null when they may not do it at all. */
export function reachOf({ roles, wardIds }: Actor, permission: Permission): Reach | null {
  const extents = roles.map((role) => grants[permission][role]);
  if (extents.includes("facility")) return {};
  return extents.includes("own-wards") ? { wardIds } : null;
}

/** Whether free text about any patient of the facility may be shown: it can name one of a unit out of reach. */
export function seesEveryPatient(actor: Actor): boolean {
  const reach = reachOf(actor, "see-patients");
  return reach !== null && reach.wardIds === undefined;
}
