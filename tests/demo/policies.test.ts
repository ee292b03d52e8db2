import { describe, expect, it } from "vitest";
import { demoPolicies, dueOn } from "../../src/demo/policies.ts";
import { policyFaults } from "../../src/domain/policy/policy-faults.ts";
import { midnight, noon, zone } from "./drawn.ts";

const hourMs = 3_600_000;

describe("the policies of the demo", () => {
  it("are of two wards, from some months ago on, and do not contradict themselves", () => {
    const policies = demoPolicies({ zone, now: noon });
    expect(policies.map(({ ward, fromDay }) => [ward, zone.dayOf(noon) - fromDay])).toEqual([
      ["ICU", 150],
      ["3W", 60],
    ]);
    expect(policies.flatMap(({ body }) => policyFaults(body))).toEqual([]);
  });

  it("have one ward's hour behind and the other's ahead, at every quarter of an hour of a day", () => {
    const start = midnight(zone.dayOf(noon));
    for (let now = start + 60_000; now < start + 24 * hourMs - 60_000; now += hourMs / 4) {
      const policies = demoPolicies({ zone, now });
      const due = (ward: string) => dueOn(policies, { ward, day: zone.dayOf(now), zone });
      expect(due("ICU")).toBeLessThan(now);
      expect(due("3W")).toBeGreaterThan(now);
    }
  });

  it("leave the built-in hour to other wards, and to the days before they begin", () => {
    const policies = demoPolicies({ zone, now: noon });
    const day = zone.dayOf(noon) - 200;
    const noonOf = midnight(day) + 12 * hourMs;
    for (const ward of ["ICU", "3W", "4N"]) expect(dueOn(policies, { ward, day, zone })).toBe(noonOf);
  });
});
