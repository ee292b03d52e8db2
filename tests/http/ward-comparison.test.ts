import { Readable } from "node:stream";
import { parse } from "csv-parse/sync";
import readExcelFile from "read-excel-file/node";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { signName } from "../../shared/culture-words.ts";
import { day, month } from "../../shared/day.ts";
import { drawChart } from "../../src/charts/draw-chart.ts";
import { svgText } from "../../src/charts/svg-text.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { identifiers } from "./alder-bay.ts";
import { type Desk, openDesk } from "./desk.ts";
import { fullRecord } from "./inputs.ts";

const { compareTwo, compareWards, readComparisonDocument } = endpoints;
const november = month.parse("2026-11");

onEachDatabase("wards compared", (fresh) => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    const wardId = desk.hospital.wards["3E"];
    await desk.ask(endpoints.watchWard, { wardId, fromMonth: november, toMonth: null, edition: "us-2024" });
    await recordInfection(desk, wardId);
    const before = await desk.ask(compareWards, {});
    expect(before.wards[0]?.infections, "nobody has confirmed it").toBe(0);
    expect(before.cautions.join(" ")).toContain("1 culture is open and not counted");
    expect([before.wards[0]?.rate.value, before.wards[0]?.open]).toEqual([0, 1]);
    const { cases } = await desk.ask(endpoints.listCases, { list: "waiting" });
    for (const { caseId, version } of cases) await desk.ask(endpoints.confirmCase, { caseId, seenVersion: version });
  });
  afterAll(() => desk?.close());

  it("are counted as the month counts them; what was not watched is missing, and an infection is one", async () => {
    const { from, to, type, types, wards, cautions } = await desk.ask(compareWards, {});
    expect([from, to, type, types]).toEqual(["2025-12", "2026-11", null, []]);
    // 22 and 3 by hand (tests/http/alder-bay.ts); the patient of the infection adds the censuses of 5 to 20 November.
    expect(wards).toMatchObject([
      { code: "3E", patientDays: 38, catheterDays: 19, watchedDays: 19, infections: 1, open: 0, note: "" },
      { code: "4N", patientDays: 4, catheterDays: 3, watchedDays: 0, infections: null },
    ]);
    expect(wards[0]?.rate.value).toBeCloseTo(1_000 / 19, 9);
    expect(wards[1]?.rate).toEqual({
      ...{ value: null, lower: null, upper: null },
      reason: "The unit was not under surveillance in this period.",
    });
    expect(wards[1]?.utilization).toMatchObject({ value: 0.75, reason: null });
    expect(cautions.join(" ")).toContain("The last month is not over");
  });

  it("are drawn without a patient in them, also for a manager, who opens own wards alone", async () => {
    const asManager = await desk.ask(compareWards, { ward: "3E" }, { person: "manager" });
    expect(asManager.wards.map(({ wardId }) => wardId)).toEqual([desk.hospital.wards["3E"], null]);
    const text = JSON.stringify(asManager);
    for (const identifier of identifiers) expect(text).not.toContain(identifier);
    const drawn = asManager.charts.flatMap((chart) => drawChart(chart) ?? []);
    expect(drawn.map(({ title }) => title)).toContain("CAUTI rate by month of 3E");
    for (const { svg } of drawn) expect(svgText(svg)).not.toMatch(/NaN|Infinity|undefined/);
    expect(asManager.charts.find(({ input }) => input.id === "dwell")?.notes.join()).not.toContain("Left out");
  });

  it("two of them are tested, with the caution on many comparisons", async () => {
    const asked = {
      ...{ first: "3E", firstFrom: november, firstTo: november },
      ...{ second: "4N", secondFrom: month.parse("2026-10"), secondTo: november },
    };
    const { first, second, tests, cautions } = await desk.ask(compareTwo, asked, { person: "manager" });
    expect([first, second]).toMatchObject([
      { code: "3E", infections: 1, catheterDays: 19, patientDays: 38, predicted: null },
      { code: "4N", infections: null, catheterDays: 0, patientDays: 4 },
    ]);
    expect(tests.map(({ what, ratio }) => [what, ratio.value])).toEqual([
      ["rate", null],
      ["sir", null],
      ["utilization", 0.5 / 0.75],
    ]);
    expect(tests.every(({ ratio, sentence }) => ratio.value !== null || sentence.includes(ratio.reason ?? "?"))).toBe(
      true,
    );
    expect(cautions.join()).toContain("find differences by chance");
    expect(tests[1]?.sentence).toContain("The unit was not under surveillance");
  });

  it("two periods of one are tested by SIR once a baseline is in use for the months", async () => {
    const asked = {
      ...{ first: "3E", firstFrom: november, firstTo: november },
      ...{ second: "3E", secondFrom: november, secondTo: november },
    };
    const sirOf = async () => (await desk.ask(compareTwo, asked)).tests[1];
    expect((await sirOf())?.sentence).toContain("No baseline is in use for 2026-11");
    const told = { source: "Invented", year: "2025", definition: "As here", population: "Nobody", edition: "1" };
    const { baselineId } = await desk.ask(endpoints.addBaseline, {
      ...{ kind: "pooled", name: "Alder Bay", ...told },
      rows: [{ ward_type: "medical", rate_per_1000: "100" }],
    });
    const ward = { name: "3 East", type: "medical", setting: "inpatient", beds: 20 } as const;
    await desk.ask(endpoints.describeWard, {
      ...{ ...ward, wardId: desk.hospital.wards["3E"], fromDay: day.parse("2026-10-01"), reason: "Its type" },
    });
    await desk.ask(endpoints.setComparison, {
      ...{ fromMonth: november, infectionBaselineId: baselineId, utilizationBaselineId: null, goal: null },
      ...{ limits: "mid-p", factors: [], reason: "First baseline", replaces: 0 },
    });
    // 19 catheter-days at 100 per 1,000: 1.9 predicted, by hand.
    const { first } = await desk.ask(compareTwo, asked);
    expect(first.predicted).toBeCloseTo(1.9, 12);
    expect((await sirOf())?.first).toBeCloseTo(1 / 1.9, 12);
    expect((await sirOf())?.ratio.value).toBe(1);
  });

  it("are taken along as a document with the same figures in every file, and its cover says what they rest on", async () => {
    const { document } = await desk.ask(readComparisonDocument, {}, { person: "manager" });
    const [sheet] = document.sheets;
    expect(sheet?.rows.map((row) => row.slice(3, 8))).toEqual([
      [38, 19, 19, 1, 1_000 / 19],
      [4, 3, 0, null, null],
    ]);
    expect(document.cover).toMatchObject([
      { label: "Facility" },
      { label: "Period", text: "2025-12-01 to 2026-11-30" },
      { label: "Data as of", text: "2026-11-20T15:00:00.000Z (UTC)" },
      { label: "Units", text: "Inpatient units of every type" },
    ]);
    const headers = { "x-demo-person": String(desk.hospital.people.manager), accept: "text/csv" };
    const asCsv = await fetch(`${desk.base}/api/v1/ward-comparison/document`, { headers });
    const rows = parse(await asCsv.text(), { columns: true }) as Record<string, string>[];
    expect(rows.map(({ rate, rate_lower }) => [rate, rate_lower])).toEqual([
      [String(1_000 / 19), String(sheet?.rows[0]?.[8])],
      ["", ""],
    ]);
    const xlsx = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    const asXlsx = await fetch(`${desk.base}/api/v1/ward-comparison/document`, {
      headers: { ...headers, accept: xlsx },
    });
    const sheets = await readExcelFile(Readable.from(Buffer.from(await asXlsx.arrayBuffer())));
    expect(sheets[1]?.data[1]?.slice(3, 9)).toEqual(sheet?.rows[0]?.slice(3, 9));
    expect(asXlsx.headers.get("vary")).toBe("accept");
  });

  describe("what cannot be compared", () => {
    it("is refused by name", async () => {
      const codeOf = async (input: Parameters<typeof desk.ask<typeof compareWards>>[1]) =>
        (await desk.refused(compareWards, input)).errors.map(({ code, pointer }) => [code, pointer]);
      expect(await codeOf({ ward: "9X" })).toEqual([["ward-unknown", "/ward"]]);
      expect(await codeOf({ type: "no such type" })).toEqual([["ward-type-unknown", "/type"]]);
      expect(await codeOf({ from: november, to: month.parse("2026-10") })).toEqual([["period-impossible", "/from"]]);
      expect(await codeOf({ to: month.parse("2026-12") })).toEqual([["in-the-future", "/to"]]);
    });

    it("is refused on its own side of two", async () => {
      const asked = { first: "3E", firstFrom: november, firstTo: november, second: "9X", secondFrom: november };
      const refused = await desk.refused(compareTwo, { ...asked, secondTo: november });
      expect(refused.errors.map(({ code, pointer }) => [code, pointer])).toEqual([["ward-unknown", "/second"]]);
    });
  });
});

/** A patient of 4 November with a catheter, fever and a culture on day 3: SUTI 1a of 3E with 6 November as its date. */
async function recordInfection(desk: Desk, wardId: number): Promise<void> {
  const admittedAt = "2026-11-04T08:00";
  const born = { birthDay: day.parse("1970-01-01"), number: "S-CAUTI", identifier: "ALDER-2001" };
  const { patientId, stayId } = await desk.ask(endpoints.admitPatient, { ...born, wardId, admittedAt });
  await desk.ask(endpoints.insertCatheter, {
    ...{ stayId, kind: "indwelling-urethral", insertedAt: "2026-11-04T08:30", record: fullRecord },
    ...{ indication: "perioperative", sizeFr: 14, balloonMl: 10 },
  });
  const on = day.parse("2026-11-06");
  const absent = signName.options.filter((sign) => sign !== "temperature");
  await desk.ask(endpoints.recordSigns, {
    ...{ patientId, day: on },
    signs: [
      { sign: "temperature", finding: "present", temperature: "38.6 °C" },
      ...absent.map((sign) => ({ sign, finding: "absent" as const })),
    ],
  });
  await desk.ask(endpoints.recordSpecimen, {
    ...{ patientId, kind: "urine", method: "culture", status: "final", collectedAt: "2026-11-06T07:00" },
    organisms: [{ name: "Escherichia coli", count: ">=100000" }],
  });
}
