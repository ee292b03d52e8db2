import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { month } from "../../shared/day.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type Desk, openDesk } from "./desk.ts";

const { readMonthGaps, admitPatient, recordAbsence, listWards } = endpoints;
const november = month.parse("2026-11");

onEachDatabase("what is missing from a month", (fresh) => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
  });
  afterAll(() => desk?.close());

  const gaps = async (person: "prevention" | "bedside" = "prevention") => {
    const codes = new Map((await desk.ask(listWards, {})).wards.map(({ wardId, code }) => [wardId, code]));
    const answer = await desk.ask(readMonthGaps, { month: november }, { person });
    return answer.gaps.map((gap) => [gap.kind, codes.get(gap.wardId ?? 0) ?? null, gap.blocks, gap.days].flat());
  };

  it("tells that it is not over, and which ward nobody described", async () => {
    expect((await gaps()).slice(0, 2)).toEqual([
      ["period-not-over", null, true],
      ["setting-missing", "OBS", true],
    ]);
  });

  it("tells of a patient who was away at a census, on the day of that census, to people of the ward", async () => {
    const wardId = desk.hospital.wards["3E"];
    const patient = { identifier: "GAP-1", number: "GAP-1", birthDay: null, sex: null };
    const { stayId } = await desk.ask(admitPatient, {
      ...patient,
      ...{ wardId, bed: "40", admittedAt: "2026-11-17T10:00" },
    });
    const times = { leftAt: "2026-11-18T20:00", backAt: "2026-11-19T08:00" };
    await desk.ask(recordAbsence, { stayId, ...times, kind: null });
    const found = ["absence-at-census", "3E", true, "2026-11-19"];
    expect(await gaps()).toContainEqual(found);
    expect(await gaps("bedside")).toContainEqual(found);
    expect((await gaps("bedside")).map(([, code]) => code)).not.toContain("OBS");
  });

  it("is not told of a month that has not begun", async () => {
    const refused = await desk.refused(readMonthGaps, { month: month.parse("2026-12") });
    expect([refused.status, refused.code]).toEqual([422, "in-the-future"]);
  });
});
