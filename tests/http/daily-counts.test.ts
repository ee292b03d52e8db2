import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { day, month } from "../../shared/day.ts";
import type { InputOf } from "../../shared/endpoint.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type Desk, openDesk } from "./desk.ts";

const { readDailyCounts, recordDailyCount } = endpoints;
const november = month.parse("2026-11");

onEachDatabase("counts made by hand", (fresh) => {
  let desk: Desk;
  let wardId: number;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    wardId = desk.hospital.wards["3E"];
  });
  afterAll(() => desk?.close());

  type Said = Partial<Omit<InputOf<typeof recordDailyCount>, "day">>;
  const count = (text: string, said: Said = {}) => ({
    ...{ wardId, day: day.parse(text), patients: 9, catheters: 3, replaces: null },
    ...said,
  });
  const refused = async (text: string, said: Said = {}) => {
    const { status, code, errors, current } = await desk.refused(recordDailyCount, count(text, said));
    return { status, code, pointer: errors[0]?.pointer, current };
  };

  it("are recorded once, with their version, and read by month", async () => {
    const { bedside } = desk.hospital.people;
    expect(await desk.tag(recordDailyCount, count("2026-11-02"), { person: "bedside" })).toBe('"1"');
    await desk.ask(recordDailyCount, count("2026-11-20", { patients: 0, catheters: 0 }), { person: "bedside" });
    await desk.ask(recordDailyCount, count("2026-10-31"));
    const read = await desk.ask(readDailyCounts, { wardId, month: november }, { person: "manager" });
    expect(read.counts).toEqual([
      { day: "2026-11-02", patients: 9, catheters: 3, version: 1, recordedBy: bedside },
      { day: "2026-11-20", patients: 0, catheters: 0, version: 1, recordedBy: bedside },
    ]);
    const missing = Array.from({ length: 19 }, (_, i) => `2026-11-${String(i + 1).padStart(2, "0")}`);
    // 20 November is today: it is not over, and would not be missing without its count either.
    expect(read.missing).toEqual(missing.filter((text) => text !== "2026-11-02"));
  });

  it("have every day missing where nobody counted, up to yesterday, and none in a month to come", async () => {
    const other = { wardId: desk.hospital.wards["4N"] };
    const days = async (text: string) =>
      (await desk.ask(readDailyCounts, { ...other, month: month.parse(text) })).missing.length;
    expect([await days("2026-10"), await days("2026-11"), await days("2026-12")]).toEqual([31, 19, 0]);
  });

  it("replace the version that was seen, and show the count as it is by now to who saw another", async () => {
    const first = await desk.ask(recordDailyCount, count("2026-11-04"));
    expect(first).toEqual({ wardId, version: 1 });
    const current = { patients: 9, catheters: 3, version: 1, day: "2026-11-04" };
    const stale = { status: 412, code: "stale-version", pointer: "/replaces" };
    expect(await refused("2026-11-04", { patients: 8 })).toMatchObject({ ...stale, current });
    const reason = "Counted one patient twice";
    const second = count("2026-11-04", { patients: 8, replaces: 1, reason });
    expect(await desk.ask(recordDailyCount, second)).toEqual({ wardId, version: 2 });
    const now = { ...current, patients: 8, version: 2 };
    expect(await refused("2026-11-04", { patients: 7, replaces: 1 })).toMatchObject({ ...stale, current: now });
    expect(await refused("2026-11-04", { patients: 7, replaces: 3 })).toMatchObject({ ...stale, current: now });
    const { counts } = await desk.ask(readDailyCounts, { wardId, month: november });
    expect(counts.find((one) => one.day === "2026-11-04")).toMatchObject({ patients: 8, version: 2 });
    // Nobody counted this day: there is no version to replace.
    expect(await refused("2026-11-05", { replaces: 1 })).toEqual({ ...stale, current: {} });
  });

  it("are of days that have come, and have catheters among the patients", async () => {
    const impossible = { status: 422, code: "count-impossible", pointer: "/catheters" };
    expect(await refused("2026-11-06", { patients: 3, catheters: 4 })).toMatchObject(impossible);
    await desk.ask(recordDailyCount, count("2026-11-06", { patients: 4, catheters: 4 }));
    expect(await refused("2026-11-21")).toMatchObject({ status: 422, code: "in-the-future", pointer: "/day" });
  });

  it("are made on wards within reach, by who may", async () => {
    const other = count("2026-11-08", { wardId: desk.hospital.wards["4N"] });
    expect((await desk.refused(recordDailyCount, other, { person: "bedside" })).status).toBe(404);
    expect((await desk.refused(recordDailyCount, count("2026-11-08"), { person: "manager" })).status).toBe(403);
    const hidden = { wardId: desk.hospital.elsewhereWardId, month: november };
    expect((await desk.refused(readDailyCounts, hidden)).status).toBe(404);
  });
});
