import { describe, expect, it } from "vitest";
import { timelineOf } from "../../../src/domain/criteria/index.ts";
import { storyDay } from "../../../src/domain/criteria/story.ts";
import { determineByWard, type FamilyOf } from "../../../src/domain/cultures/determine-by-ward.ts";
import { familyOfWards, scopeIn } from "../../../src/domain/cultures/family-of-wards.ts";
import { catheterOn, glanceAround } from "../../../src/domain/cultures/glance.ts";
import { placeOf } from "../../../src/domain/cultures/place-of.ts";
import { determinationWithCodes, withWardCodes } from "../../../src/domain/cultures/ward-codes.ts";

const grew = [["Escherichia coli", ">100000"]] as const;
/** On ward 1 to day 9, then on ward 2; a culture and a fever on day 10. */
const moved = timelineOf({
  wards: [
    [1, 1, 9],
    [2, 9, null],
  ],
  catheters: [[2, null]],
  urine: [{ day: 10, grew }],
  signs: [{ day: 10, sign: "38.6" }],
});
const editionsBy = (familyOf: FamilyOf) =>
  determineByWard(moved, familyOf).map(({ determination, placeId }) => [determination.editionId, placeId]);

describe("whose definitions judge a culture", () => {
  it("are those of the ward at collection, and of the ward to which the event then belongs", () => {
    expect(editionsBy(() => "us")).toEqual([["us-2024", 2]]);
    expect(editionsBy(() => "ecdc")).toEqual([["ecdc-2017", 2]]);
    // By the rule of transfers the event of day 10 belongs to ward 1.
    expect(editionsBy((wardId) => (wardId === 1 ? "ecdc" : "us"))).toEqual([["ecdc-2017", 2]]);
    expect(editionsBy((wardId) => (wardId === 2 ? "ecdc" : "us"))[0]?.[1]).toBe(2);
  });

  it("follow the months in which a ward is watched, and no name that is not held", () => {
    const scope = { wardId: 1, fromMonth: "2024-03", toMonth: "2024-04", edition: "ecdc-2017" } as never;
    const other = { wardId: 2, fromMonth: "2024-01", toMonth: null, edition: "our-own" } as never;
    const familyOf = familyOfWards([scope, other]);
    expect(familyOf(1, storyDay(10))).toBe("ecdc");
    expect(familyOf(1, storyDay(10) + 61)).toBe("us");
    expect([familyOf(2, storyDay(10)), familyOf(null, storyDay(10))]).toEqual(["us", "us"]);
    expect(scopeIn([scope, other], 1, "2024-05" as never)).toBeUndefined();
    expect(scopeIn([scope, other], 2, "2030-01" as never)).toBe(other);
  });
});

describe("where and how a patient was", () => {
  it("is the last ward before a moment, or the first after it", () => {
    const at = (day: number) => placeOf(moved, { day: storyDay(day), at: null });
    expect([at(-3), at(8), at(9), at(40)]).toEqual([1, 1, 2, 2]);
    expect(placeOf({ stays: [] }, { day: storyDay(1), at: null })).toBeNull();
  });

  it("is told for 14 days around a culture", () => {
    const days = glanceAround(moved, storyDay(10));
    expect(days.map(({ day }) => day - storyDay(0))).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13]);
    expect(days[0]).toMatchObject({ wardId: null, catheter: false });
    expect(days[1]).toMatchObject({ wardId: 1, catheter: false });
    expect(days[10]).toMatchObject({ wardId: 2, catheter: true, signs: ["38.6 °C"], urine: 1, blood: 0 });
    expect(catheterOn(moved, storyDay(1))).toBe(false);
  });
});

describe("the codes of wards", () => {
  const codes = new Map([[7, "ICU"]]);
  it("stand in the place of their numbers, where they are known", () => {
    expect(withWardCodes("From ward 7 to ward 70, and forward 7.", codes)).toBe(
      "From unit ICU to ward 70, and forward 7.",
    );
  });
  it("stand in every sentence of a determination", () => {
    const [one] = determineByWard(moved, () => "us");
    if (!one) throw new Error("nothing was determined");
    const told = determinationWithCodes(one.determination, new Map([[1, "3E"]]));
    const sentences = told.derivation.map(({ sentence }) => sentence).join(" ");
    expect(sentences).toContain("unit 3E");
    expect(sentences).not.toMatch(/ward 1\b/);
  });
});
