import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { censusTime, day, month } from "../../shared/day.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { auditOf } from "../databases/read-back.ts";
import { lookedAt } from "./alder-bay.ts";
import { type Desk, openDesk } from "./desk.ts";

const { addWard, closeWard, describeWard, listScope, listWards, readFacility, readMonth, readWardHistory } = endpoints;
const { setCensus, watchWard } = endpoints;
const reason = "Agreed with the units";
const said = { name: "5 South", type: "medical", setting: "inpatient", beds: 24 } as const;
const november = month.parse("2026-11");

onEachDatabase("settings", (fresh) => {
  let desk: Desk;
  let wards: Desk["hospital"]["wards"];
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    wards = desk.hospital.wards;
  });
  afterAll(() => desk?.close());

  it("add a ward, which is listed and watched from then on; its code is taken", async () => {
    const openedDay = day.parse("2026-11-01");
    const { wardId } = await desk.ask(addWard, { ...said, code: "5S", openedDay }, { person: "administrator" });
    const listed = (await desk.ask(listWards, {})).wards.find((ward) => ward.wardId === wardId);
    expect(listed).toEqual({ ...said, wardId, code: "5S", openedDay, closedDay: null, namedOnly: false });
    const taken = await desk.refused(addWard, { ...said, code: "5S", openedDay: null });
    expect([taken.status, taken.code, taken.errors[0]?.pointer]).toEqual([409, "ward-code-taken", "/code"]);
    const months = { fromMonth: november, toMonth: null, edition: "us-2024" } as const;
    const { scopeId } = await desk.ask(watchWard, { wardId, ...months });
    const { prevention } = desk.hospital.people;
    expect(await desk.ask(listScope, {})).toEqual({
      scopes: [{ scopeId, wardId, ...months, isHeld: true, version: 1, recordedBy: prevention, recordedAt: lookedAt }],
    });
    const again = await desk.refused(watchWard, { wardId, ...months, fromMonth: month.parse("2026-12") });
    expect([again.status, again.code]).toEqual([409, "scope-overlaps"]);
    const backwards = await desk.refused(watchWard, {
      wardId: wards["4N"],
      ...months,
      toMonth: month.parse("2026-10"),
    });
    expect([backwards.status, backwards.code]).toEqual([422, "end-before-start"]);
  });

  it("show the scope of their own wards to people of these", async () => {
    const months = { fromMonth: november, toMonth: november, edition: "us-2024" } as const;
    await desk.ask(watchWard, { wardId: wards["4N"], ...months });
    await desk.ask(watchWard, { wardId: wards["3E"], ...months });
    const seen = async (person: "prevention" | "bedside" | "elsewhere") =>
      (await desk.ask(listScope, {}, { person })).scopes.map(({ wardId }) => wardId);
    expect((await seen("prevention")).slice(0, 2)).toEqual([wards["3E"], wards["4N"]]);
    expect(await seen("bedside")).toEqual([wards["3E"]]);
    expect(await seen("elsewhere")).toEqual([]);
  });

  it("say what a ward is from a day on, with who said it, and count its days by it", async () => {
    const days = async () =>
      (await desk.ask(readMonth, { month: november })).sheet.rows.find(([code]) => code === "4N")?.slice(2, 4);
    expect(await days()).toEqual([4, 3]);
    const input = { wardId: wards["4N"], ...said, setting: "outpatient" as const, fromDay: day.parse("2026-11-09") };
    await desk.ask(describeWard, { ...input, reason }, { person: "administrator" });
    expect(await days()).toEqual([2, 2]);
    const { settings, merged, ...ward } = await desk.ask(readWardHistory, { wardId: wards["4N"] });
    expect(merged).toEqual([]);
    expect(ward).toEqual({ wardId: wards["4N"], code: "4N", openedDay: null, closedDay: null, namedOnly: false });
    const recorded = { byHand: true, version: 1, recordedAt: lookedAt, recordedBy: desk.hospital.people.administrator };
    expect(settings).toHaveLength(2);
    expect(settings[1]).toEqual({ ...said, setting: "outpatient", fromDay: "2026-11-09", reason, ...recorded });
  });

  it("close a ward when nobody is there any more", async () => {
    const refused = await desk.refused(closeWard, { wardId: wards["3E"], closedDay: day.parse("2026-11-19") });
    expect([refused.status, refused.code, refused.errors[0]?.pointer]).toEqual([409, "ward-in-use", "/closedDay"]);
    expect(refused.errors[0]?.detail).toBe("The record has 1 time of patients on this unit after 2026-11-19.");
    await desk.ask(closeWard, { wardId: wards["4N"], closedDay: day.parse("2026-11-10"), reason });
    const { closedDay } = await desk.ask(readWardHistory, { wardId: wards["4N"] }, { person: "prevention" });
    expect(closedDay).toBe("2026-11-10");
  });

  it("change the census time from the first day of a month to come, and no other", async () => {
    const census = (text: string, time = "06:00") => ({
      ...{ fromDay: day.parse(text), time: censusTime.parse(time), reason },
    });
    for (const text of ["2026-11-01", "2026-11-20", "2026-12-02"]) {
      const early = await desk.refused(setCensus, census(text));
      expect([early.status, early.code, early.errors[0]?.pointer]).toEqual([
        409,
        "census-change-too-early",
        "/fromDay",
      ]);
    }
    await desk.ask(setCensus, census("2026-12-01"), { person: "administrator" });
    expect((await desk.ask(readFacility, {})).census.slice(1)).toEqual([{ fromDay: "2026-12-01", time: "06:00" }]);
    const { facilityId } = await desk.ask(readFacility, {});
    const audit = await auditOf(desk.hospital.store, facilityId, lookedAt);
    expect(audit.filter(({ action }) => action === "change-facility")).toMatchObject([
      { personId: desk.hospital.people.administrator, details: { census: { time: "06:00" }, reason } },
    ]);
  });

  it("are nothing that bedside staff and managers can change", async () => {
    const months = { fromMonth: november, toMonth: null, edition: "us-2024" } as const;
    for (const person of ["bedside", "manager"] as const) {
      const wardId = wards["3E"];
      const fromDay = day.parse("2026-12-01");
      const answers = [
        await desk.refused(addWard, { ...said, code: "6S", openedDay: null }, { person }),
        await desk.refused(describeWard, { wardId, ...said, fromDay, reason }, { person }),
        await desk.refused(closeWard, { wardId, closedDay: fromDay }, { person }),
        await desk.refused(watchWard, { wardId, ...months }, { person }),
        await desk.refused(setCensus, { fromDay, time: censusTime.parse("07:00"), reason }, { person }),
      ];
      expect(answers.map(({ status }) => status)).toEqual([403, 403, 403, 403, 403]);
    }
  });
});
