import { describe, expect, it } from "vitest";
import { type Permission, permission } from "../../shared/permissions.ts";
import { type Role, role } from "../../shared/vocabulary.ts";
import { reachOf } from "../../src/usecases/reach.ts";

type Extent = "all" | "own" | "none";

/**
 * Who may do what. Source: the roles as they are described to users: bedside records on own wards, prevention watches
 * the facility, a manager sees results of own wards and no patients, an administrator looks after people, policy and
 * feeds and sees no clinical content but the lines of files that were refused to them, a feed only sends.
 */
const table: Readonly<Record<Permission, Readonly<Record<Role, Extent>>>> = {
  "see-own-account": { bedside: "all", prevention: "all", manager: "all", administrator: "all", feed: "all" },
  "see-facility": { bedside: "all", prevention: "all", manager: "all", administrator: "all", feed: "none" },
  "see-wards": { bedside: "own", prevention: "all", manager: "own", administrator: "all", feed: "none" },
  "see-counts": { bedside: "own", prevention: "all", manager: "own", administrator: "none", feed: "none" },
  "compare-wards": { bedside: "none", prevention: "all", manager: "all", administrator: "none", feed: "none" },
  "see-patients": { bedside: "own", prevention: "all", manager: "none", administrator: "none", feed: "none" },
  "record-care": { bedside: "own", prevention: "all", manager: "none", administrator: "none", feed: "none" },
  "judge-cases": { bedside: "none", prevention: "all", manager: "none", administrator: "none", feed: "none" },
  "merge-patients": { bedside: "none", prevention: "all", manager: "none", administrator: "none", feed: "none" },
  "count-by-hand": { bedside: "own", prevention: "all", manager: "none", administrator: "none", feed: "none" },
  "see-policy": { bedside: "own", prevention: "all", manager: "own", administrator: "all", feed: "none" },
  "set-policy": { bedside: "none", prevention: "all", manager: "none", administrator: "all", feed: "none" },
  "see-baselines": { bedside: "all", prevention: "all", manager: "all", administrator: "all", feed: "none" },
  "set-baselines": { bedside: "none", prevention: "all", manager: "none", administrator: "all", feed: "none" },
  "sign-month": { bedside: "none", prevention: "all", manager: "none", administrator: "none", feed: "none" },
  "set-wards": { bedside: "none", prevention: "all", manager: "none", administrator: "all", feed: "none" },
  "import-records": { bedside: "none", prevention: "all", manager: "none", administrator: "all", feed: "none" },
  "set-facility": { bedside: "none", prevention: "all", manager: "none", administrator: "all", feed: "none" },
  "see-changes": { bedside: "own", prevention: "all", manager: "none", administrator: "none", feed: "none" },
  "see-audit": { bedside: "none", prevention: "all", manager: "none", administrator: "all", feed: "none" },
};

const reaches = { all: {}, own: { wardIds: [3, 4] }, none: null } as const;

const actor = (roles: readonly Role[]) => ({ personId: 1, facilityId: 2, roles, wardIds: [3, 4] });

describe("reachOf", () => {
  const cases = permission.options.flatMap((one) => role.options.map((as) => [as, one, table[one][as]] as const));

  it.each(cases)("lets a person of the role %s with the permission %s reach: %s", (as, one, extent) => {
    expect(reachOf(actor([as]), one)).toEqual(reaches[extent]);
  });

  it("takes the widest of several roles, and nothing from no role", () => {
    expect(reachOf(actor(["manager", "bedside"]), "see-patients")).toEqual(reaches.own);
    expect(reachOf(actor(["administrator", "prevention"]), "see-patients")).toEqual(reaches.all);
    expect(reachOf(actor(["administrator", "feed"]), "see-patients")).toBeNull();
    expect(reachOf(actor([]), "see-own-account")).toBeNull();
  });
});
