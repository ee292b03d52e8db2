import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { day, month } from "../../shared/day.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { cultured } from "./cultured.ts";
import { type Desk, openDesk } from "./desk.ts";
import { fullRecord } from "./inputs.ts";

const { readMonth, readMonthGaps, recordNoneFound, recordSigns, recordSpecimen, watchWard } = endpoints;
const november = month.parse("2026-11");
const october = month.parse("2026-10");

onEachDatabase("events and their absence", (fresh) => {
  let desk: Desk;
  let wardId: number;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    wardId = desk.hospital.wards["3E"];
    await desk.ask(watchWard, { wardId, fromMonth: october, toMonth: null, edition: "us-2024" });
    await cultured(desk);
    await cultured(desk, { grew: "No growth", warm: false });
  });
  afterAll(() => desk?.close());

  it("lets somebody say that none were found, until an event appears", async () => {
    const early = await desk.refused(recordNoneFound, { wardId, month: november });
    expect(early.code).toBe("month-not-over");
    const unwatched = await desk.refused(recordNoneFound, { wardId: desk.hospital.wards["4N"], month: october });
    expect(unwatched.code).toBe("ward-not-watched");
    const missing = async () =>
      (await desk.ask(readMonthGaps, { month: october })).gaps.some(({ kind }) => kind === "none-found-missing");
    expect(await missing()).toBe(true);
    const { noneFoundId } = await desk.ask(recordNoneFound, { wardId, month: october });
    expect((await desk.refused(recordNoneFound, { wardId, month: october })).code).toBe("none-found-already");
    expect(await missing()).toBe(false);
    const october1 = async () =>
      (await desk.ask(readMonth, { month: october })).infections.find((one) => one.wardId === wardId);
    expect((await october1())?.noneFound).toMatchObject({ noneFoundId, version: 1 });
    const stay = await desk.ask(endpoints.admitPatient, {
      ...{ wardId, identifier: "CASE-OCTOBER", number: "S-CASE-OCTOBER", admittedAt: "2026-10-20T08:00" },
      birthDay: day.parse("1960-05-05"),
    });
    const warm = [{ sign: "dysuria" as const, finding: "present" as const }];
    await desk.ask(recordSigns, { patientId: stay.patientId, day: day.parse("2026-10-26"), signs: warm });
    await desk.ask(endpoints.insertCatheter, {
      ...{ stayId: stay.stayId, kind: "indwelling-urethral", insertedAt: "2026-10-20T09:00" },
      ...{ indication: "perioperative", sizeFr: 14, balloonMl: 10, record: fullRecord },
    });
    const tender = [{ sign: "suprapubic-tenderness" as const, finding: "present" as const }];
    await desk.ask(recordSigns, { patientId: stay.patientId, day: day.parse("2026-10-27"), signs: tender });
    await desk.ask(recordSpecimen, {
      ...{ patientId: stay.patientId, kind: "urine", method: "culture", status: "final" },
      ...{ collectedAt: "2026-10-27T07:00", organisms: [{ name: "Proteus mirabilis", count: ">100000" }] },
    });
    expect(await october1()).toMatchObject({ noneFound: null, waiting: 1 });
    expect((await desk.refused(recordNoneFound, { wardId, month: october })).code).toBe("event-found");
  });

  it("names patients of events only to who may see them, and tells what another edition would say", async () => {
    const period = { first: day.parse("2026-10-01"), last: day.parse("2026-11-20") };
    const full = await desk.ask(endpoints.readEvents, period);
    const at = (key: string) => full.sheet.columns.findIndex((column) => column.key === key);
    expect(full.sheet.rows.map((row) => row[at("patient")])).toContain("CASE-OCTOBER");
    const bare = await desk.ask(endpoints.readEvents, period, { person: "manager" });
    expect(bare.sheet.rows).toHaveLength(full.sheet.rows.length);
    expect(bare.caseIds.every((one) => one === null)).toBe(true);
    expect(JSON.stringify(bare)).not.toContain("CASE-");
    expect(bare.sheet.rows.map((row) => row[at("date")])).toEqual(full.sheet.rows.map(() => null));
    const long = await desk.refused(endpoints.readEvents, { ...period, first: day.parse("2025-01-01") });
    expect(long.code).toBe("period-too-long");
    const compared = await desk.ask(endpoints.compareEditions, {
      ...period,
      editionId: "us-2024",
      otherId: "ecdc-2017",
    });
    // Both infections are ones by both editions, under criteria of other names; the third culture comes out alike.
    expect(compared.compared).toBe(3);
    expect(compared.differences.map(({ before, after }) => [before?.isCauti, after?.isCauti])).toEqual([
      [true, true],
      [true, true],
    ]);
    for (const { before, after } of compared.differences) expect(before?.summary).not.toBe(after?.summary);
    const same = await desk.ask(endpoints.compareEditions, { ...period, editionId: "us-2024", otherId: "us-2024" });
    expect(same).toEqual({ compared: compared.compared, differences: [] });
    const { sheet } = await desk.ask(endpoints.readMonthCultures, { month: november });
    expect(sheet.rows.find(([code]) => code === "3E")?.slice(2, 5)).toEqual([2, 2, 1]);
    const { editions } = await desk.ask(endpoints.listEditions, {});
    for (const { editionId } of editions) {
      const { rules } = await desk.ask(endpoints.readEdition, { editionId });
      expect(rules.flatMap(({ examples }) => examples).filter(({ sentences }) => sentences.length === 0)).toEqual([]);
    }
  });
});
