import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { day } from "../../shared/day.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { auditOf } from "../databases/read-back.ts";
import { lookedAt } from "./alder-bay.ts";
import { type Desk, openDesk } from "./desk.ts";
import { fillRound } from "./full-round.ts";

const { readRound } = endpoints;

onEachDatabase("a ward's round", (fresh) => {
  let desk: Desk;
  let beds: Awaited<ReturnType<typeof fillRound>>;
  let wardId: number;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    beds = await fillRound(desk);
    wardId = desk.hospital.wards["3E"];
  });
  afterAll(() => desk?.close());

  const round = (text?: string, ward = wardId) =>
    desk.ask(readRound, { wardId: ward, ...(text === undefined ? {} : { day: day.parse(text) }) });
  const rowsOf = async (text?: string, ward = wardId) =>
    (await round(text, ward)).rows.map(({ bed, eligibilityDay, states }) => [
      ...[bed, eligibilityDay],
      states.map(({ state }) => state).join(", "),
    ]);

  it("has what needs doing first at the top, then goes by bed", async () => {
    const { day: today, at, caution } = await round();
    expect([today, at]).toEqual(["2026-11-20", lookedAt]);
    expect(caution).toMatch(/^This tool counts and reminds\./);
    expect(await rowsOf()).toEqual([
      ["2", 2, "overdue"],
      // Perioperative catheters are past the threshold after eligibility day 2, which an exchange does not begin anew.
      ["4", 3, "overdue, past-threshold, asked"],
      ["9", 2, "overdue"],
      ["10", 4, "overdue, past-threshold, doubtful"],
      ["7", 3, "past-threshold, removal-decided, done"],
      ["5", 1, "indication-missing"],
      ["3", 3, "done"],
      ["6", null, ""],
      ["8", 1, ""],
    ]);
  });

  it("tells of each catheter what is recorded of it", async () => {
    const { rows } = await round();
    const row = (bed: string) => rows.find((one) => one.bed === bed);
    const { patientId, stayId, catheterId } = beds[4];
    expect(row("4")).toMatchObject({
      ...{ patientId, stayId, catheterId, identifier: "BED-4", version: 1, kind: "indwelling-urethral" },
      insertedAt: Date.UTC(2026, 10, 19, 15, 30),
      // Its own age, while the eligibility day goes on from the catheter before.
      age: { days: 2, atLeast: false },
      indication: "perioperative",
      lastSeenAt: Date.UTC(2026, 10, 20, 13),
      dueAt: Date.UTC(2026, 10, 20, 14),
    });
    expect(row("5")).toMatchObject({ inPlaceOnArrival: true, insertedAt: null, age: { days: 1, atLeast: true } });
    expect(row("5")).toMatchObject({ indication: null, dueAt: null });
    expect(row("3")?.indication).toBe("retention-or-obstruction");
    expect(row("6")).toMatchObject({ kind: "suprapubic", eligibilityDay: null, dueAt: null });
  });

  it("names the policy behind each state with its version and ward, and says why", async () => {
    const { rows } = await round();
    const [first] = rows[0]?.states ?? [];
    expect(first).toEqual({
      state: "overdue",
      reason: "The review of eligibility day 2 was due by 09:00 on unit 3E and has not been made.",
      policy: {
        ...{ number: 1, wardId },
        sentence:
          "Policy of unit 3E, version 1, from 2026-11-20: a catheter is reviewed every day from eligibility day 2 on, by 09:00.",
      },
    });
    const past = await round("2026-11-19");
    expect(past.rows[0]?.states[0]?.policy).toEqual({
      ...{ number: 0, wardId: null },
      sentence: "Built-in policy: a catheter is reviewed every day from eligibility day 2 on, by 12:00.",
    });
  });

  it("of a day that is over is as it was at its end", async () => {
    // 19 November ended at midnight, 05:00 UTC of the 20th.
    expect((await round("2026-11-19")).at).toBe(Date.UTC(2026, 10, 20, 5) - 1);
    expect(await rowsOf("2026-11-19")).toEqual([
      ["3", 2, "missed"],
      ["4", 2, "missed"],
      ["7", 2, "missed"],
      ["10", 3, "missed, past-threshold, doubtful"],
      ["11", 2, "missed"],
      ["12", 2, "missed"],
      ["2", 1, ""],
      ["6", null, ""],
      ["9", 1, ""],
    ]);
    expect(await rowsOf("2026-11-16")).toEqual([["9", 2, "missed"]]);
    expect(await rowsOf("2026-11-14")).toEqual([]);
  });

  it("keeps a bed that is held during a procedure, and lets go of who moved or is on leave", async () => {
    expect((await rowsOf(undefined, desk.hospital.wards["4N"])).map(([bed]) => bed)).toEqual(["1"]);
    const here = (await rowsOf()).map(([bed]) => bed);
    expect(here).toContain("8");
    expect(here).not.toContain("11");
    expect(here).not.toContain("12");
  });

  it("is not told of days to come", async () => {
    const refused = await desk.refused(readRound, { wardId, day: day.parse("2026-11-21") });
    expect([refused.status, refused.code, refused.errors[0]?.pointer]).toEqual([422, "in-the-future", "/day"]);
  });

  it("is recorded as seen, with its patients and without what they could be known by", async () => {
    const { facilityId } = await desk.ask(endpoints.readFacility, {});
    const { rows } = await desk.ask(readRound, { wardId }, { person: "bedside" });
    const views = (await auditOf(desk.hospital.store, facilityId, lookedAt)).filter(
      ({ action, personId }) => action === "view-round" && personId === desk.hospital.people.bedside,
    );
    const patientIds = rows.map(({ patientId }) => patientId).toSorted((a, b) => a - b);
    expect(views).toEqual([
      expect.objectContaining({ patientIds, details: { wardId, day: "2026-11-20" }, at: lookedAt }),
    ]);
    for (const person of ["manager", "administrator"] as const)
      expect((await desk.refused(readRound, { wardId }, { person })).status).toBe(403);
  });

  it("is no entry and has no version; its rows have that of the catheter, and removed ones are gone", async () => {
    expect(await desk.tag(readRound, { wardId })).toBeNull();
    const { rows } = await round();
    const { catheterId, version } = rows.find(({ bed }) => bed === "9") ?? { catheterId: 0, version: 0 };
    const removal = { catheterId, removedAt: "2026-11-20T09:30", seenVersion: version };
    await desk.ask(endpoints.removeCatheter, removal, { person: "bedside" });
    expect((await rowsOf()).map(([bed]) => bed)).not.toContain("9");
    expect((await rowsOf("2026-11-19")).map(([bed]) => bed)).toContain("9");
  });
});
