import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { month } from "../../shared/day.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { auditOf } from "../databases/read-back.ts";
import { identifiers, lookedAt } from "./alder-bay.ts";
import { type Desk, openDesk } from "./desk.ts";
import { careFigures, fillCare } from "./month-of-care.ts";

const { readMonthCare, readWardCare } = endpoints;
const november = month.parse("2026-11");

onEachDatabase("a month's care", (fresh) => {
  let desk: Desk;
  let filled: Awaited<ReturnType<typeof fillCare>>;
  let wards: Desk["hospital"]["wards"];
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    filled = await fillCare(desk);
    wards = desk.hospital.wards;
  });
  afterAll(() => desk?.close());

  const sheetOf = (person: "prevention" | "manager" | "bedside") =>
    desk.ask(readMonthCare, { month: november }, { person });
  const { "3E": east, "4N": north, total } = careFigures;

  it("is what was worked out by hand, by ward and in sum", async () => {
    const { sheet, wardIds } = await sheetOf("prevention");
    expect(sheet.columns.slice(2).map(({ key }) => key)).toEqual(Object.keys(east));
    // Nobody said what OBS is: it is no inpatient ward, and nothing is due there.
    expect(wardIds).toEqual([wards["3E"], wards["4N"]]);
    expect(sheet.rows).toEqual([
      ["3E", "Ward 3E", ...Object.values(east)],
      ["4N", "Ward 4N", ...Object.values(north)],
    ]);
    expect(sheet.total).toEqual(["All units", "", ...Object.values(total)]);
  });

  it("has as many reviews due as were made in time, late, not made, and are overdue", async () => {
    const { sheet } = await sheetOf("prevention");
    const at = (key: string) => sheet.columns.findIndex((column) => column.key === key);
    for (const row of [...sheet.rows, sheet.total ?? []]) {
      const parts = ["reviews_in_time", "reviews_late", "reviews_missed", "reviews_overdue"];
      const sum = parts.reduce((all, key) => all + Number(row[at(key)]), 0);
      expect(row[at("reviews_due")]).toBe(sum);
      expect(sum).toBeGreaterThan(0);
    }
  });

  it("of the own wards is seen by managers and at the bedside", async () => {
    for (const person of ["manager", "bedside"] as const) {
      const { sheet, wardIds } = await sheetOf(person);
      expect(wardIds).toEqual([wards["3E"]]);
      expect(sheet.total?.[0]).toBe("Your units");
    }
  });

  it("can be opened down to its catheters and days", async () => {
    const { figures } = await desk.ask(readWardCare, { wardId: wards["3E"], month: november }, { person: "bedside" });
    const { alder, kept, outside, past } = filled;
    const rows = (name: string) =>
      figures
        .find(({ figure }) => figure === name)
        ?.rows.map(({ catheterId, day }) => `${catheterId} ${day.slice(-2)}`);
    expect(rows("reviewsInTime")).toEqual([`${kept} 17`]);
    expect(rows("reviewsLate")).toEqual([`${kept} 18`]);
    const missed = [`${alder} 03`, `${alder} 04`, `${outside} 18`, `${kept} 19`, `${outside} 19`, `${past} 19`];
    expect(rows("reviewsMissed")).toEqual(missed);
    expect(rows("reviewsOverdue")).toEqual([`${kept} 20`, `${outside} 20`, `${past} 20`]);
    expect(rows("daysPastThreshold")).toEqual([`${past} 20`]);
    expect(rows("daysWithoutIndication")).toEqual([`${alder} 03`, `${alder} 04`, `${alder} 05`]);
    expect(rows("daysOutsidePolicy")).toEqual([`${outside} 18`, `${outside} 19`, `${outside} 20`]);
    expect(rows("daysDoubtful")).toEqual([`${outside} 20`]);
    expect(rows("careChecks")).toEqual([`${kept} 17`, `${kept} 18`, `${kept} 19`]);
    expect(rows("careChecksKept")).toEqual([`${kept} 17`]);
    expect(rows("careChecksBroken")).toEqual([`${kept} 18`]);
    expect(rows("careChecksIncomplete")).toEqual([`${kept} 19`]);
    expect(rows("reviewsDue")).toHaveLength(east.reviews_due);
    const insertions = figures.find(({ figure }) => figure === "insertions")?.rows;
    expect(insertions?.find(({ catheterId }) => catheterId === alder)).toMatchObject({
      ...{ day: "2026-11-02", identifier: "ALDER-1001" },
    });
  });

  it("is recorded as seen with the patients of its rows, when it is opened down to them", async () => {
    const { facilityId } = await desk.ask(endpoints.readFacility, {});
    await desk.ask(readWardCare, { wardId: wards["4N"], month: november });
    const views = (await auditOf(desk.hospital.store, facilityId, lookedAt)).filter(
      ({ action, personId }) => action === "view-ward-care" && personId === desk.hospital.people.prevention,
    );
    const { patients } = await desk.ask(endpoints.findPatients, { identifier: identifiers[1] });
    expect(views).toEqual([
      expect.objectContaining({
        ...{ patientIds: [patients[0]?.patientId], details: { wardId: wards["4N"], month: november } },
      }),
    ]);
  });

  it("shows managers no rows, the bedside none of other wards, and nobody a month to come", async () => {
    const input = { wardId: wards["3E"], month: november };
    const manager = await desk.refused(readWardCare, input, { person: "manager" });
    expect([manager.status, manager.code]).toEqual([403, "not-permitted"]);
    const other = await desk.refused(readWardCare, { ...input, wardId: wards["4N"] }, { person: "bedside" });
    expect([other.status, other.code]).toEqual([404, "not-found"]);
    const december = month.parse("2026-12");
    const early = [
      await desk.refused(readMonthCare, { month: december }),
      await desk.refused(readWardCare, { ...input, month: december }),
    ];
    for (const { status, code, errors } of early)
      expect([status, code, errors[0]?.pointer]).toEqual([422, "in-the-future", "/month"]);
  });
});
