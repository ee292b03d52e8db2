import { describe, expect, it } from "vitest";
import { confirmationIntervalMs, qualityFindings } from "../../../src/domain/timeline/data-quality.ts";
import type { Stay } from "../../../src/domain/timeline/timeline.ts";
import { stayFromLines, wardIds } from "./written.ts";

const always = { start: 0, end: Number.MAX_SAFE_INTEGER };

/** Findings as text: kind, entry, from when to when. */
function findingsOf(stay: Stay, { period = always, now = 100 } = {}): string[] {
  return qualityFindings(stay, period, now).map((f) => `${f.kind} ${f.entry} ${f.start}-${f.end ?? ""}`);
}

describe("what is doubtful about a stay", () => {
  it.each([
    { title: "nothing", lines: ["stay 1: 10-50", "ward stay 2: A 10-50", "catheter 3: 12-18"], found: [] },
    {
      title: "time off the wards, of known and unknown kind",
      lines: ["stay 1: 10-60", "ward stay 2: A 10-20 then leave", "ward stay 3: B 30-40", "ward stay 4: A 50-60"],
      found: ["absence-known ward stay 2 20-30", "absence-unknown ward stay 3 40-50"],
    },
    {
      title: "an absence that lasts",
      lines: ["stay 1: 10-", "ward stay 2: A 10-20"],
      found: ["absence-unknown ward stay 2 20-"],
    },
    {
      title: "a catheter in place on arrival",
      lines: ["stay 1: 10-50", "ward stay 2: A 10-50", "catheter 3: arrived ?-18"],
      found: ["in-place-on-arrival catheter 3 10-10"],
    },
    {
      title: "a removal between two instants",
      lines: ["stay 1: 10-50", "ward stay 2: A 10-50", "catheter 3: 12-18..22"],
      found: ["removal-between catheter 3 18-22"],
    },
  ])("$title", ({ lines, found }) => {
    expect(findingsOf(stayFromLines(...lines))).toEqual(found);
  });

  it("names the ward that an absence follows", () => {
    const [absence] = qualityFindings(stayFromLines("stay 1: 10-", "ward stay 2: B 10-20"), always, 100);
    expect(absence).toMatchObject({ stayId: 1, wardId: wardIds.B });
  });

  it("looks at a period only", () => {
    const stay = stayFromLines("stay 1: 10-", "ward stay 2: A 10-20", "ward stay 3: B 30-40", "ward stay 4: A 50-");
    expect(findingsOf(stay, { period: { start: 0, end: 20 } })).toEqual([]);
    expect(findingsOf(stay, { period: { start: 0, end: 21 } })).toEqual(["absence-unknown ward stay 2 20-30"]);
    expect(findingsOf(stay, { period: { start: 29, end: 40 } })).toEqual(["absence-unknown ward stay 2 20-30"]);
    // A stretch of time leaves its end out.
    expect(findingsOf(stay, { period: { start: 30, end: 60 } })).toEqual(["absence-unknown ward stay 3 40-50"]);
  });

  it("takes what is doubtful about one instant at the very beginning of the period, and not at its end", () => {
    const stay = stayFromLines("stay 1: 10-50", "ward stay 2: A 10-50", "catheter 3: arrived ?-18");
    expect(findingsOf(stay, { period: { start: 10, end: 60 } })).toEqual(["in-place-on-arrival catheter 3 10-10"]);
    expect(findingsOf(stay, { period: { start: 11, end: 60 } })).toEqual([]);
    expect(findingsOf(stay, { period: { start: 0, end: 10 } })).toEqual([]);
  });
});

describe("time on a ward before anything was said of that ward", () => {
  const stay = stayFromLines("stay 1: 10-", "ward stay 2: A 10-30", "ward stay 3: B 30-");
  const opening = (instants: Readonly<Record<number, number>>, period = always) =>
    qualityFindings(stay, { ...period, opensAt: (wardId) => instants[wardId] ?? null }, 100).map(
      (f) => `${f.kind} ${f.wardId} ${f.entry} ${f.start}-${f.end ?? ""}`,
    );

  it("is found up to the end of the ward stay or the opening of the ward, whichever comes first", () => {
    expect(opening({ [wardIds.A]: 25 })).toEqual([`ward-not-open ${wardIds.A} ward stay 2 10-25`]);
    expect(opening({ [wardIds.A]: 40, [wardIds.B]: 45 })).toEqual([
      `ward-not-open ${wardIds.A} ward stay 2 10-30`,
      `ward-not-open ${wardIds.B} ward stay 3 30-45`,
    ]);
  });

  it("is none when the ward opened as the patient came, nor on a ward of which nothing is known", () => {
    expect(opening({ [wardIds.A]: 10, [wardIds.B]: 11 })).toEqual([]);
    expect(opening({ [wardIds.A]: 11 })).toEqual([`ward-not-open ${wardIds.A} ward stay 2 10-11`]);
    expect(opening({})).toEqual([]);
  });

  it("is not found on an entry that was voided", () => {
    const wardStays = stay.wardStays.map((w) => ({ ...w, voidReason: "wrong" }));
    expect(qualityFindings({ ...stay, wardStays }, { ...always, opensAt: () => 25 }, 100)).toEqual([]);
  });

  it("belongs to the periods before the opening, and not to the one that begins with it", () => {
    const found = [`ward-not-open ${wardIds.A} ward stay 2 10-25`];
    expect(opening({ [wardIds.A]: 25 }, { start: 0, end: 25 })).toEqual(found);
    expect(opening({ [wardIds.A]: 25 }, { start: 24, end: 60 })).toEqual(found);
    expect(opening({ [wardIds.A]: 25 }, { start: 25, end: 60 })).toEqual([]);
  });
});

describe("a catheter that nobody confirmed", () => {
  const day = confirmationIntervalMs / 2;
  const first = 10;
  const stay = stayFromLines("stay 1: 10-", "ward stay 2: A 10-", "catheter 3: 10-");

  it("is doubtful from 48 hours after its insertion (common practice)", () => {
    expect(confirmationIntervalMs).toBe(48 * 3_600_000);
    expect(findingsOf(stay, { now: first + 2 * day - 1 })).toEqual([]);
    expect(findingsOf(stay, { now: first + 2 * day })).toEqual([`not-confirmed catheter 3 ${first + 2 * day}-`]);
  });

  it("is doubtful from 48 hours after it was last seen", () => {
    const seen = { ...stay, catheters: stay.catheters.map((c) => ({ ...c, lastSeenAt: first + day })) };
    expect(findingsOf(seen, { now: first + 2 * day })).toEqual([]);
    expect(findingsOf(seen, { now: first + 3 * day })).toEqual([`not-confirmed catheter 3 ${first + 3 * day}-`]);
  });

  it("is doubtful from 48 hours after its last note", () => {
    const noted = { first: first + 1, last: first + day };
    const reviewed = { ...stay, catheters: stay.catheters.map((c) => ({ ...c, lastSeenAt: first + 5, noted })) };
    expect(findingsOf(reviewed, { now: first + 3 * day - 1 })).toEqual([]);
    expect(findingsOf(reviewed, { now: first + 3 * day })).toEqual([`not-confirmed catheter 3 ${first + 3 * day}-`]);
  });

  it("was in place on arrival at the latest, whenever it was seen before", () => {
    const arrived = stayFromLines("stay 1: 10-", "ward stay 2: A 10-", "catheter 3: arrived 2- seen 5");
    expect(findingsOf(arrived, { now: first + 2 * day })).toEqual([
      `in-place-on-arrival catheter 3 ${first}-${first}`,
      `not-confirmed catheter 3 ${first + 2 * day}-`,
    ]);
  });

  it("is not doubtful once its removal is known, and no longer than the stay", () => {
    const gone = { ...stay, catheters: stay.catheters.map((c) => ({ ...c, removedAt: first + 9 * day })) };
    expect(findingsOf(gone, { now: first + 20 * day })).toEqual([]);
    const end = first + 3 * day;
    const wardStays = stay.wardStays.map((w) => ({ ...w, endAt: end }));
    const ended = { ...stay, dischargedAt: end, wardStays };
    expect(findingsOf(ended, { now: first + 20 * day })).toEqual([
      `not-confirmed catheter 3 ${first + 2 * day}-${end}`,
    ]);
  });
});

describe("a local time that occurred twice", () => {
  it("is found on the stay, the ward stay and the catheter that carry the mark, unless they were voided", () => {
    const plain = stayFromLines("stay 1: 10-50", "ward stay 2: A 10-50", "catheter 3: 12-18");
    const stay: Stay = {
      ...plain,
      marks: ["repeated-hour:admittedAt"],
      wardStays: plain.wardStays.map((w) => ({ ...w, marks: ["repeated-hour:startAt"] })),
      catheters: plain.catheters.map((c) => ({ ...c, marks: ["repeated-hour:insertedAt"] })),
    };
    const found = ["repeated-hour stay 1 10-10", "repeated-hour ward stay 2 10-10", "repeated-hour catheter 3 12-12"];
    expect(findingsOf(stay)).toEqual(found);
    const voided = { ...stay, catheters: stay.catheters.map((c) => ({ ...c, voidReason: "wrong" })) };
    expect(findingsOf(voided)).toEqual(found.slice(0, 2));
  });
});

describe("by the policy of a ward", () => {
  const hour = 3_600_000;
  const policyAt = (wardId: number | null) => ({
    confirmationHours: wardId === wardIds.A ? 10 : 30,
    bedHoldHours: wardId === wardIds.A ? 4 : null,
  });
  const found = (stay: ReturnType<typeof stayFromLines>, now: number) =>
    qualityFindings(stay, { ...always, policyAt }, now).map(({ kind, start }) => `${kind} ${start / hour}`);

  it("a catheter is doubtful after the hours of the ward on which it was last seen", () => {
    const on = (ward: string) => stayFromLines("stay 1: 0-", `ward stay 2: ${ward} 0-`, "catheter 3: 0-");
    expect(found(on("A"), 9 * hour)).toEqual([]);
    expect(found(on("A"), 10 * hour)).toEqual(["not-confirmed 10"]);
    expect(found(on("B"), 29 * hour)).toEqual([]);
    expect(found(on("B"), 30 * hour)).toEqual(["not-confirmed 30"]);
  });

  it("a bed that is held too long is listed, and where there is no limit it is not", () => {
    const away = (ward: string) =>
      stayFromLines("stay 1: 0-", `ward stay 2: ${ward} 0-${hour} then procedure`, `ward stay 3: ${ward} ${6 * hour}-`);
    expect(found(away("A"), 7 * hour)).toEqual(["absence-known 1", "bed-held-long 5"]);
    expect(found(away("B"), 7 * hour)).toEqual(["absence-known 1"]);
  });
});
