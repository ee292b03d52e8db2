import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { month } from "../../shared/day.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type Desk, openDesk } from "./desk.ts";
import { fillRound, placing } from "./full-round.ts";

const { readCatheter, readWardCare } = endpoints;

onEachDatabase("a catheter's story", (fresh) => {
  let desk: Desk;
  let beds: Awaited<ReturnType<typeof fillRound>>;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    beds = await fillRound(desk);
  });
  afterAll(() => desk?.close());

  const daysOf = async (catheterId: number) =>
    (await desk.ask(readCatheter, { catheterId })).days.map(({ day, eligibilityDay, review }) => [
      ...[day, eligibilityDay, review],
    ]);

  it("tells each day's number and review: missed, and overdue today by the ward's own hour", async () => {
    expect(await daysOf(beds[10].catheterId)).toEqual([
      ["2026-11-17", 1, "not-due"],
      ["2026-11-18", 2, "missed"],
      ["2026-11-19", 3, "missed"],
      ["2026-11-20", 4, "overdue"],
    ]);
  });

  it("goes on counting across an exchange, and tells what was reviewed", async () => {
    expect(await daysOf(beds[4].catheterId)).toEqual([
      ["2026-11-19", 2, "missed"],
      ["2026-11-20", 3, "overdue"],
    ]);
    expect((await daysOf(beds[3].catheterId)).at(-1)).toEqual(["2026-11-20", 3, "done"]);
  });

  it("tells the wards on which it was in place, a held bed as the ward's", async () => {
    const { wards } = desk.hospital;
    const moved = await desk.ask(readCatheter, { catheterId: beds[11].catheterId });
    const at = Date.UTC(2026, 10, 20, 13);
    expect(moved.wards).toEqual([
      { wardId: wards["3E"], startAt: Date.UTC(2026, 10, 18, 18), endAt: at },
      { wardId: wards["4N"], startAt: at, endAt: null },
    ]);
    expect([moved.patientId, moved.identifier]).toEqual([beds[11].patientId, "BED-11"]);
    const held = await desk.ask(readCatheter, { catheterId: beds[8].catheterId });
    expect(held.wards).toEqual([{ wardId: wards["3E"], startAt: Date.UTC(2026, 10, 20, 11, 30), endAt: null }]);
  });

  it("agrees with the month of care on the days on which a review was missed", async () => {
    const wardId = desk.hospital.wards["3E"];
    const { figures } = await desk.ask(readWardCare, { wardId, month: month.parse("2026-11") });
    const missed = figures.find(({ figure }) => figure === "reviewsMissed")?.rows ?? [];
    const told = [];
    // Bed 5 came with its catheter, bed 6 has a suprapubic one: neither owed a review on a day that is over.
    const own = new Set(Object.values(beds).flatMap(({ catheterId }) => (catheterId === 0 ? [] : [catheterId])));
    for (const catheterId of own) {
      const { days } = await desk.ask(readCatheter, { catheterId });
      told.push(...days.filter(({ review }) => review === "missed").map(({ day }) => `${catheterId} ${day}`));
    }
    expect(told.sort()).toEqual(
      missed
        .filter((row) => own.has(row.catheterId))
        .map((row) => `${row.catheterId} ${row.day}`)
        .sort(),
    );
    expect(told.length).toBeGreaterThan(3);
  });

  it("cuts a story of more than 400 days at its beginning and says how much", async () => {
    const { place } = placing(desk);
    const { catheterId } = await place("99", "2025-09-01T08:00", "2025-09-01T09:00");
    const { days, daysLeftOut } = await desk.ask(readCatheter, { catheterId });
    // From September 1, 2025 to November 20, 2026 there are 446 days.
    expect([days.length, daysLeftOut, days.at(-1)?.day, days.at(-1)?.eligibilityDay]).toEqual([
      ...[400, 46, "2026-11-20", 446],
    ]);
  });

  it("has no days once it was voided", async () => {
    const { catheterId } = beds[2];
    await desk.ask(endpoints.voidCatheter, { catheterId, seenVersion: 1, reason: "Another patient's" });
    const { days, wards, voidReason } = await desk.ask(readCatheter, { catheterId });
    expect([days, wards, voidReason]).toEqual([[], [], "Another patient's"]);
  });
});
