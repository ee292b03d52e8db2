import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { defaultPolicy } from "../../../src/domain/policy/default-policy.ts";
import { type PolicyVersion, policyInForce } from "../../../src/domain/policy/policy-in-force.ts";

const ward = 101;
const other = 102;

/** A version as `facility 1 from 10` or `ward 2 from 10 back`; its review begins on the day of its number. */
function versionOf(text: string): PolicyVersion {
  const [, level, number, fromDay, back] = /^(ward|facility) (\d+) from (\d+)( back)?$/.exec(text) ?? [];
  if (!level) throw new Error(`nothing is known of "${text}"`);
  return {
    id: Number(number) + (level === "ward" ? 1000 : 0),
    wardId: level === "ward" ? ward : null,
    number: Number(number),
    fromDay: Number(fromDay),
    body: back ? null : { ...defaultPolicy, reviewFromDay: Number(number) },
    recordedAt: 0,
    recordedBy: 1,
    reason: "agreed",
  };
}

/** What is in force on a ward on a day, in the same words. */
function inForce(versions: readonly PolicyVersion[], day: number, wardId: number | null = ward): string {
  const policy = policyInForce(versions, wardId, day);
  if (policy.number === 0) {
    expect(policy).toEqual({ body: defaultPolicy, number: 0, wardId: null, fromDay: null });
    return "built in";
  }
  expect(policy.body.reviewFromDay).toBe(policy.number);
  expect([null, wardId]).toContain(policy.wardId);
  return `${policy.wardId === null ? "facility" : "ward"} ${policy.number} from ${policy.fromDay}`;
}

describe("the policy in force on a ward", () => {
  it.each<[title: string, versions: string[], onDay: Record<number, string>]>([
    ["is built in where nobody set one", [], { 10: "built in" }],
    [
      "is the facility's from its first day on",
      ["facility 1 from 10"],
      { 9: "built in", 10: "facility 1 from 10", 99: "facility 1 from 10" },
    ],
    [
      "is the ward's own rather than a later one of the facility",
      ["ward 1 from 10", "facility 1 from 5", "facility 2 from 20"],
      { 4: "built in", 9: "facility 1 from 5", 10: "ward 1 from 10", 20: "ward 1 from 10" },
    ],
    [
      "is the one that began last",
      ["facility 1 from 10", "facility 2 from 20"],
      { 19: "facility 1 from 10", 20: "facility 2 from 20" },
    ],
    [
      "is the one with the highest number of those with one first day",
      ["facility 2 from 10", "facility 3 from 10", "facility 1 from 10"],
      { 10: "facility 3 from 10" },
    ],
    [
      "is not ended by one that is recorded later and begins earlier: that one fills the days before",
      ["facility 1 from 10", "facility 2 from 30", "facility 3 from 20"],
      { 19: "facility 1 from 10", 20: "facility 3 from 20", 29: "facility 3 from 20", 30: "facility 2 from 30" },
    ],
    [
      "goes back to the facility's",
      ["facility 1 from 5", "ward 1 from 10", "ward 2 from 20 back", "ward 3 from 30"],
      { 10: "ward 1 from 10", 20: "facility 1 from 5", 29: "facility 1 from 5", 30: "ward 3 from 30" },
    ],
    [
      "goes back to the built-in one",
      ["facility 1 from 5", "facility 2 from 20 back", "ward 1 from 10 back"],
      { 10: "facility 1 from 5", 20: "built in" },
    ],
  ])("%s", (_, texts, onDay) => {
    const versions = texts.map(versionOf);
    const found = Object.keys(onDay).map((day) => [day, inForce(versions, Number(day))]);
    expect(Object.fromEntries(found)).toEqual(onDay);
  });

  it("is no other ward's, and the facility's own ignores wards", () => {
    const versions = ["ward 1 from 10", "facility 1 from 5"].map(versionOf);
    expect(inForce(versions, 10, other)).toBe("facility 1 from 5");
    expect(inForce(versions, 10, null)).toBe("facility 1 from 5");
  });

  const anyVersion = fc
    .record({ level: fc.constantFrom("ward", "facility"), fromDay: fc.nat(9), back: fc.boolean() })
    .map(({ level, fromDay, back }) => `${level} from ${fromDay}${back ? " back" : ""}`);

  it("is, on every day, what painting the versions on a calendar in the order of first days gives", () => {
    fc.assert(
      fc.property(fc.array(anyVersion, { maxLength: 8 }), (texts) => {
        const versions = texts.map((text, i) => versionOf(text.replace(" from", ` ${i + 1} from`)));
        const painted = (wardId: number | null) => {
          const days: (PolicyVersion | undefined)[] = Array(10).fill(undefined);
          const own = versions.filter((version) => version.wardId === wardId);
          for (const version of own.toSorted((a, b) => a.fromDay - b.fromDay)) days.fill(version, version.fromDay);
          return days;
        };
        const [ofWard, ofFacility] = [painted(ward), painted(null)];
        for (let day = 0; day < 10; day++) {
          const version = [ofWard[day], ofFacility[day]].find((one) => one && one.body !== null);
          const level = version?.wardId === null ? "facility" : "ward";
          const expected = version ? `${level} ${version.number} from ${version.fromDay}` : "built in";
          expect(inForce(versions.toReversed(), day)).toBe(expected);
        }
      }),
    );
  });
});
