import { describe, expect, it } from "vitest";
import type { RecordedSpecimen } from "../../../src/domain/cultures/specimen.ts";
import { hour, move, plan, specimen } from "./lines.ts";

const stayOn = move(2, { from: hour(8), to: hour(100) });
const coli = { collected: hour(30), organism: "Escherichia coli", count: ">100,000" };

/** What lines make of recorded specimens, as text, and what becomes of each. */
function planned(
  lines: ReturnType<typeof specimen>[],
  before: readonly RecordedSpecimen[] = [],
  seen = lines.slice(0, 0),
) {
  const made = plan([stayOn, ...lines], undefined, before.length === 0 ? 100 : 200, [], {
    cultures: { specimens: before, signs: [] },
    seen,
  });
  const after = new Map(before.map((one) => [one.id, one]));
  for (const { now } of made.cultures.specimens) after.set(now.id, now);
  return { outcomes: made.outcomes.slice(1), told: [...after.values()].map(told), after: [...after.values()] };
}

function told({ kind, number, status, organisms, version }: RecordedSpecimen): string {
  const grown = organisms.map(({ name, group, count }) => `${name}${group ? ` (${group})` : ""} ${count}`).join(" + ");
  return `${kind} ${number} ${status} v${version}: ${grown || "no growth"}`;
}

describe("lines of specimens", () => {
  it("of one kind and time are one specimen, those with a number one each", () => {
    const lines = [
      specimen(2, coli),
      specimen(3, { ...coli, organism: "Proteus mirabilis", count: "10^4" }),
      specimen(4, { ...coli, kind: "blood", specimen: "B1" }),
      specimen(5, { ...coli, kind: "blood", specimen: "B2", organism: null, count: null }),
    ];
    expect(planned(lines)).toMatchObject({
      outcomes: ["accepted", "accepted", "accepted", "accepted"],
      told: [
        "urine null final v1: Escherichia coli >100,000 + Proteus mirabilis 10^4",
        "blood B1 final v1: Escherichia coli >100,000",
        "blood B2 final v1: no growth",
      ],
    });
  });

  it("with what nobody can read yet are kept as they were written, and marked", () => {
    const lines = [
      specimen(2, { ...coli, organism: "Strange rod", count: "10.000" }),
      specimen(3, { ...coli, organism: "Another rod", group: "bacterium" }),
    ];
    expect(planned(lines)).toMatchObject({
      outcomes: ["organism-unknown count-unreadable", "accepted"],
      told: ["urine null final v1: Strange rod 10.000 + Another rod (bacterium) >100,000"],
    });
  });

  it("of a further report take the place of what was recorded; of the same one they add to it", () => {
    const first = planned([specimen(2, { ...coli, organism: "Gram-negative rods", status: "preliminary" })]).after;
    const final = planned([specimen(2, coli)], first);
    expect(final.told).toEqual(["urine null final v2: Escherichia coli >100,000"]);
    const more = planned([specimen(3, { ...coli, organism: "proteus MIRABILIS" })], final.after);
    expect(more.told).toEqual(["urine null final v3: Escherichia coli >100,000 + proteus MIRABILIS >100,000"]);
    expect(
      planned([specimen(2, { ...coli, organism: "ESCHERICHIA  coli", count: null })], more.after).outcomes,
    ).toEqual(["unchanged"]);
    const recount = planned([specimen(2, { ...coli, count: "50,000" })], more.after);
    expect(recount.told).toEqual(["urine null final v4: Escherichia coli 50,000 + proteus MIRABILIS >100,000"]);
    // Of the same organism the id stays, so that what was said of it is found.
    const corrected = planned([specimen(2, { ...coli, status: "corrected", count: "900" })], more.after).after;
    expect(corrected.map(told)).toEqual(["urine null corrected v4: Escherichia coli 900"]);
    expect(corrected[0]?.organisms[0]?.id).toBe(final.after[0]?.organisms[0]?.id);
    expect(planned([specimen(2, { collected: hour(30), status: "corrected" })], corrected).told).toEqual([
      "urine null corrected v5: no growth",
    ]);
  });

  it("of an older report change nothing and are marked", () => {
    const { after } = planned([specimen(2, coli)]);
    const older = planned([specimen(2, { ...coli, organism: "GNR", status: "preliminary" })], after);
    expect(older).toMatchObject({ outcomes: ["report-older"], after });
  });

  it("of one folder tell one report after the other, whatever their order", () => {
    const lines = [specimen(2, coli), specimen(3, { ...coli, organism: null, count: null, status: "pending" })];
    expect(planned(lines).told).toEqual(["urine null final v1: Escherichia coli >100,000"]);
  });

  it("are all refused with one that cannot be, because two of three organisms are another result", () => {
    const lines = [
      specimen(2, coli),
      specimen(3, { ...coli, organism: "Candida albicans", group: "bacterium" }),
      specimen(4, { ...coli, kind: "blood" }),
    ];
    expect(planned(lines)).toMatchObject({
      outcomes: ["specimen-refused null see specimens.csv line 3", "organism-group-contradicts group", "accepted"],
      told: ["blood null final v1: Escherichia coli >100,000"],
    });
  });

  it("are refused where they contradict each other or the record", () => {
    const noGrowth = { collected: hour(30) };
    const refusals = (...lines: ReturnType<typeof specimen>[]) => planned(lines).outcomes;
    expect(refusals(specimen(2, noGrowth), specimen(3, coli))[1]).toBe(
      "line-contradicts collected see specimens.csv line 2",
    );
    expect(refusals(specimen(2, coli), specimen(3, noGrowth))[1]).toBe(
      "line-contradicts collected see specimens.csv line 2",
    );
    expect(refusals(specimen(2, coli), specimen(3, { ...coli, count: "10" }))[1]).toBe(
      "line-contradicts collected see specimens.csv line 2",
    );
    expect(
      refusals(specimen(2, { ...coli, specimen: "U1" }), specimen(3, { ...coli, specimen: "U1", kind: "blood" }))[1],
    ).toBe("line-contradicts collected see specimens.csv line 2");
    expect(planned([specimen(2, noGrowth)], planned([specimen(2, coli)]).after).outcomes).toEqual([
      "result-contradicts organism",
    ]);
    expect(refusals(specimen(2, { ...coli, status: "pending" }))).toEqual(["result-contradicts status"]);
    expect(refusals(specimen(2, { ...coli, stay: "S9" }))).toEqual(["stay-unknown stay"]);
    // The stay ends on the day 4, and its cultures count up to four days later.
    expect(refusals(specimen(2, { ...coli, collected: hour(9 * 24) }))).toEqual([
      "outside-surveillance-days collected",
    ]);
    expect(refusals(specimen(2, { ...coli, collected: hour(8 * 24) }))).toEqual(["accepted"]);
    expect(refusals(specimen(2, { ...coli, collected: hour(11 * 24) }))).toEqual(["in-the-future collected"]);
  });

  it("find the recorded specimen by number, or by kind and time; a number and a time can still be given", () => {
    const { after } = planned([specimen(2, coli)]);
    const numbered = planned([specimen(2, { ...coli, specimen: "U1" })], after);
    expect(numbered.told).toEqual(["urine U1 final v2: Escherichia coli >100,000"]);
    const moved = planned([specimen(2, { ...coli, specimen: "U1", collected: hour(32) })], numbered.after);
    expect(moved.after).toMatchObject([{ id: after[0]?.id, collectedAt: hour(32), version: 3 }]);
    const two = planned([specimen(2, { ...coli, specimen: "U1" }), specimen(3, { ...coli, specimen: "U2" })]).after;
    expect(two).toHaveLength(2);
    expect(planned([specimen(2, coli)], two).outcomes).toEqual(["specimen-unclear collected"]);
    const voided = after.map((one) => ({ ...one, voidReason: "Another patient's" }));
    expect(planned([specimen(2, coli)], voided).after).toHaveLength(2);
  });

  it("that were stored before hold against a line that says something else", () => {
    const seen = [specimen(2, coli)];
    const { after } = planned(seen);
    expect(planned([specimen(3, { ...coli, count: "10" })], after, seen).outcomes).toEqual([
      "line-contradicts collected see specimens.csv line 2",
    ]);
    expect(planned([specimen(3, { ...coli, organism: "Proteus mirabilis" })], after, seen).told).toEqual([
      "urine null final v2: Escherichia coli >100,000 + Proteus mirabilis >100,000",
    ]);
  });

  it("that say no growth in words are no organism beside others", () => {
    const none = { collected: hour(30), organism: "No growth at 48 hours" };
    const first = planned([specimen(2, none)]);
    expect(first.told).toEqual(["urine null final v1: No growth at 48 hours null"]);
    expect(planned([specimen(2, none)], first.after).outcomes).toEqual(["unchanged"]);
    expect(planned([specimen(2, { ...none, organism: "Sterile" })], first.after).outcomes).toEqual(["unchanged"]);
    expect(planned([specimen(2, coli)], first.after).told).toEqual(["urine null final v2: Escherichia coli >100,000"]);
    expect(planned([specimen(2, none)], planned([specimen(2, coli)]).after).outcomes).toEqual([
      "result-contradicts organism",
    ]);
    for (const lines of [
      [specimen(2, none), specimen(3, coli)],
      [specimen(2, coli), specimen(3, none)],
    ])
      expect(planned(lines).outcomes[1]).toBe("line-contradicts collected see specimens.csv line 2");
    const corrected = planned([specimen(2, { ...none, status: "corrected" })], planned([specimen(2, coli)]).after);
    expect(corrected.told).toEqual(["urine null corrected v2: No growth at 48 hours null"]);
  });
});
