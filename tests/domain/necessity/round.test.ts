import { describe, expect, it } from "vitest";
import type { NecessityPatient } from "../../../src/domain/necessity/facts.ts";
import { type RoundRow, roundOf, roundsOf } from "../../../src/domain/necessity/round.ts";
import { march } from "../counting/march-records.ts";
import { wardIds } from "../timeline/written.ts";
import { marchDay, patientFrom, policyWith, rulesWith } from "./written-notes.ts";

/** A patient on ward A with the catheter of the same number, in a bed. */
function inBed(
  id: number,
  bed: string | null,
  notes: readonly string[] = [],
  catheter = `05/09:00-`,
): NecessityPatient {
  const patient = patientFrom(
    [`stay ${id}: 05/08:00-`, `ward stay ${id}: A 05/08:00-`, `catheter ${id}: ${catheter}`],
    notes,
  );
  const stays = patient.stays.map((stay) => ({ ...stay, wardStays: stay.wardStays.map((w) => ({ ...w, bed })) }));
  return { ...patient, patientId: 1000 + id, stays };
}

function round(
  patients: readonly NecessityPatient[],
  now: string,
  ward: keyof typeof wardIds = "A",
  rules = rulesWith(),
): RoundRow[] {
  const day = marchDay(now.slice(0, 2));
  return roundOf({ wardId: wardIds[ward], day, at: march(now.slice(0, 2), now.slice(3)), patients, rules });
}

describe("a ward's round", () => {
  it("says of each catheter what the record says, and what is due", () => {
    const patient = inBed(3, "12", ["review 3 06/09:00 keep for end-of-life", "confirmation 3 07/08:00"]);
    const [row] = round([patient], "07/10:00");
    expect(row).toMatchObject({
      ...{ bed: "12", patientId: 1003, stayId: 3, catheterId: 3, kind: "indwelling-urethral" },
      ...{ insertedAt: march("05", "09:00"), inPlaceOnArrival: false, eligibilityDay: 3 },
      age: { days: 3, atLeast: false },
      indication: { code: "end-of-life", accepted: true, noteId: 1 },
      lastSeenAt: march("07", "08:00"),
      dueAt: march("07", "12:00"),
      states: [{ state: "due", policy: { number: 0, wardId: null } }],
    });
  });

  it.each<[title: string, catheter: string, now: string, listed: boolean]>([
    ["from its insertion on", "05/09:00-", "05/09:00", true],
    ["not before", "05/09:00-", "05/08:59", false],
    ["until its removal", "05/09:00-06/10:00", "06/09:59", true],
    ["not from then on", "05/09:00-06/10:00", "06/10:00", false],
    ["until the first of two instants of a removal", "05/09:00-06/10:00..06/12:00", "06/10:00", false],
  ])("lists a catheter %s", (_, catheter, now, listed) => {
    expect(round([inBed(3, "1", [], catheter)], now)).toHaveLength(listed ? 1 : 0);
  });

  it("lists patients who are there, also while their bed is held, and no others", () => {
    const lines = [
      ...["stay 1: 05/08:00-", "ward stay 2: A 05/08:00-06/10:00 then procedure"],
      ...["ward stay 4: B 06/12:00-07/10:00 then leave", "ward stay 5: A 08/10:00-", "catheter 3: 05/09:00-"],
    ];
    const wardAt = (now: string) =>
      (["A", "B"] as const).filter((ward) => round([patientFrom(lines)], now, ward).length > 0);
    expect(["05/10:00", "06/11:00", "06/12:00", "07/11:00", "08/10:00"].map(wardAt)).toEqual([
      ["A"],
      ["A"],
      ["B"],
      [],
      ["A"],
    ]);
  });

  it("lists other kinds without a day number, an indication or a review", () => {
    const [row] = round([inBed(3, "1", [], "05/09:00- suprapubic")], "06/10:00");
    expect(row).toMatchObject({
      kind: "suprapubic",
      eligibilityDay: null,
      indication: null,
      dueAt: null,
      age: { days: 2 },
      states: [],
    });
  });

  it("has no day number off the inpatient wards", () => {
    const lines = ["stay 1: 05/08:00-", "ward stay 2: C 05/08:00-", "catheter 3: 05/09:00-"];
    const [row] = round([patientFrom(lines)], "06/13:00", "C");
    expect(row).toMatchObject({ eligibilityDay: null, dueAt: null, states: [{ state: "indication-missing" }] });
  });

  it("is worked out by the policy of the ward on that day", () => {
    const rules = rulesWith((wardId) => policyWith({ reviewDueAt: "08:00" }, { wardId, number: 2 }));
    const [row] = round([inBed(3, "1")], "06/10:00", "A", rules);
    expect(row?.states[0]).toMatchObject({ state: "overdue", policy: { number: 2, wardId: wardIds.A } });
    expect(row?.states[0]?.policy.sentence).toContain("Policy of unit A, version 2");
  });

  it("shows a day that is over as it was at its end", () => {
    const patient = inBed(3, "1", ["review 3 07/00:00 keep for other"]);
    const atEnd = roundOf({
      ...{ wardId: wardIds.A, day: marchDay("06"), patients: [patient], rules: rulesWith() },
      at: march("07", "00:00") - 1,
    });
    expect(atEnd[0]?.states.map(({ state }) => state)).toEqual(["overdue", "indication-missing"]);
    const afterwards = roundOf({
      ...{ wardId: wardIds.A, day: marchDay("06"), patients: [patient], rules: rulesWith() },
      at: march("07", "00:00"),
    });
    expect(afterwards[0]?.states.map(({ state }) => state)).toEqual(["missed", "indication-outside"]);
  });
});

describe("the order of a round", () => {
  const kept = (id: number, day: string) => `review ${id} ${day}/09:00 keep for end-of-life`;

  it("puts first what needs doing first", () => {
    const patients = [
      inBed(10, "1", [kept(10, "06"), kept(10, "07")]),
      inBed(11, "2", [kept(11, "06"), "review 11 07/09:00 ask"]),
      inBed(12, "3", [kept(12, "06"), "review 12 07/09:00 remove"]),
      inBed(13, "4", [kept(13, "06"), "confirmation 13 07/08:00"]),
      inBed(14, "5"),
      inBed(15, "6", [kept(15, "06"), "review 15 07/09:00 keep for incontinence"]),
      inBed(16, "7", [], "07/09:00- suprapubic"),
    ];
    const order = (now: string) =>
      round(patients, now).map(({ catheterId, states: [first] }) => `${catheterId} ${first?.state}`);
    expect(order("07/11:00")).toEqual([
      "14 doubtful",
      "12 removal-decided",
      "11 asked",
      "13 due",
      "15 indication-outside",
      "10 done",
      "16 undefined",
    ]);
    expect(order("07/13:00").slice(0, 4)).toEqual(["11 overdue", "13 overdue", "14 overdue", "12 removal-decided"]);
  });

  it("then goes by beds as people count them, those without a bed last, then by number", () => {
    const beds: [number, string | null][] = [
      [9, null],
      [8, null],
      [7, "10"],
      [6, "2"],
      [5, "W2-1"],
      [4, "2"],
      [3, "1"],
      [2, "W10-1"],
    ];
    const rows = round(
      beds.map(([id, bed]) => inBed(id, bed)),
      "06/10:00",
    );
    expect(rows.map(({ bed, catheterId }) => `${bed}:${catheterId}`)).toEqual([
      "1:3",
      "2:4",
      "2:6",
      "10:7",
      "W2-1:5",
      "W10-1:2",
      "null:8",
      "null:9",
    ]);
  });

  it("is the same in one pass over all wards as ward by ward", () => {
    const moved = patientFrom(
      ["stay 4: 05/08:00-", "ward stay 4: A 05/08:00-06/09:00", "ward stay 5: B 06/10:00-", "catheter 4: 05/09:00-"],
      [],
    );
    const patients = [inBed(3, "12"), { ...moved, patientId: 1004 }];
    const facts = { day: marchDay("07"), at: march("07", "10:00"), patients, rules: rulesWith() };
    const rounds = roundsOf(facts, [wardIds.A, wardIds.B]);
    expect([...rounds.values()].map((rows) => rows.map(({ catheterId }) => catheterId))).toEqual([[3], [4]]);
    for (const [wardId, rows] of rounds) expect(rows).toEqual(roundOf({ ...facts, wardId }));
  });
});
