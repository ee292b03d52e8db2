import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { month } from "../../shared/day.ts";
import type { InputOf } from "../../shared/endpoint.ts";
import type { FigureKey } from "../../shared/figure-words.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { auditOf } from "../databases/read-back.ts";
import { type Desk, openDesk } from "./desk.ts";
import { baselineOrigin, fullRecord } from "./inputs.ts";

const { addBaseline, addOwnBaseline, describeWard, listBaselines, listComparisons, readMonthFigures, setComparison } =
  endpoints;
const november = month.parse("2026-11");
const october = month.parse("2026-10");

onEachDatabase("what months are compared with", (fresh) => {
  let desk: Desk;
  let east: number;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    east = desk.hospital.wards["3E"];
  });
  afterAll(() => desk?.close());

  const csv = "ward_type;infections;catheter_days;patient_days\nmedical;6;2000;5000\n";
  const comparison = (said: Partial<InputOf<typeof setComparison>> = {}) => ({
    ...{ fromMonth: november, infectionBaselineId: null, utilizationBaselineId: null, goal: null },
    ...{ limits: "mid-p-to-100" as const, factors: [], reason: "Agreed", replaces: 0 },
    ...said,
  });
  const figure = async (of: typeof november, key: FigureKey) => {
    const { report } = await desk.ask(readMonthFigures, { month: of });
    return report.wards.find(({ wardId }) => wardId === east)?.figures.find((one) => one.key === key);
  };

  it("is kept as it was given, as a file or typed, and refused with every fault", async () => {
    const pooled = await desk.ask(addBaseline, { kind: "pooled", ...baselineOrigin, csv });
    const rows = [{ term: "intercept", coefficient: "-6" }];
    await desk.ask(addBaseline, { kind: "infection-model", ...baselineOrigin, name: "A model", rows });
    const { baselines } = await desk.ask(listBaselines, {}, { person: "bedside" });
    expect(baselines.map(({ name, kind, rows: given }) => [name, kind, given])).toEqual([
      [
        "Alder Bay region",
        "pooled",
        [{ ward_type: "medical", infections: "6", catheter_days: "2000", patient_days: "5000" }],
      ],
      ["A model", "infection-model", rows],
    ]);
    expect(baselines[0]).toMatchObject({ baselineId: pooled.baselineId, ...baselineOrigin });
    const twice = "ward_type,rate_per_1000,utilization\nmedical,-1,2\nmedical,1,\n";
    const refused = await desk.refused(addBaseline, { kind: "pooled", ...baselineOrigin, csv: twice });
    expect(refused.errors.map(({ pointer }) => pointer)).toEqual(["/rates/0/rate_per_1000"]);
    const neither = await desk.refused(addBaseline, { kind: "pooled", ...baselineOrigin });
    expect([neither.code, neither.errors[0]?.pointer]).toEqual(["baseline-unusable", "/rows"]);
  });

  it("holds from a month on, by the latest version, and tells what it predicts term by term", async () => {
    const type = { name: "3 East", type: "medical", setting: "inpatient", beds: 24 } as const;
    await desk.ask(describeWard, { ...type, wardId: east, fromDay: "2026-01-01" as never, reason: "Described" });
    const { baselines } = await desk.ask(listBaselines, {});
    const [pooledId = 0, modelId = 0] = baselines.map(({ baselineId }) => baselineId);
    const both = { infectionBaselineId: modelId, utilizationBaselineId: pooledId };
    expect(await desk.ask(setComparison, comparison({ ...both, goal: 0.8 }))).toEqual({ number: 1 });
    // 22 patient-days x 2,000 / 5,000, and 3 catheter-days (the hospital's own figures).
    expect(await figure(november, "sur")).toMatchObject({ numerator: 3, denominator: expect.closeTo(8.8, 9) });
    expect((await figure(october, "sur"))?.reason).toBe("No baseline is set for this month.");
    const { report } = await desk.ask(readMonthFigures, { month: november }, { person: "manager" });
    expect(report.baselines).toMatchObject({
      infections: { name: "A model" },
      catheterDays: { name: "Alder Bay region" },
    });
    expect(report.wards[0]?.predicted.infections.steps[0]).toEqual({ what: "intercept", value: -6 });
    const factors = [{ wardId: east, factor: "beds", value: 30 }];
    const second = comparison({ utilizationBaselineId: pooledId, factors, replaces: 1, fromMonth: october });
    expect(await desk.ask(setComparison, second)).toEqual({ number: 2 });
    expect((await figure(october, "sur"))?.reason).toMatch(/are predicted, so the SUR is withheld/);
    const { comparisons } = await desk.ask(listComparisons, {});
    expect(comparisons.map(({ number, goal, factors: told }) => [number, goal, told])).toEqual([
      [1, 0.8, []],
      [2, null, factors],
    ]);
    const actions = (await auditOf(desk.hospital.store, 1)).map(({ action }) => action);
    expect(actions.filter((action) => /baseline|comparison/.test(action))).toEqual([
      ...["add-baseline", "add-baseline", "set-comparison", "set-comparison"],
    ]);
  });

  it("is refused when it is stale, of another kind, or not there", async () => {
    const { baselines } = await desk.ask(listBaselines, {});
    const [pooledId = 0, modelId = 0] = baselines.map(({ baselineId }) => baselineId);
    const refused = async (said: Partial<InputOf<typeof setComparison>>) => {
      const { code, errors } = await desk.refused(setComparison, comparison({ replaces: 2, ...said }));
      return [code, errors[0]?.pointer];
    };
    expect(await refused({ replaces: 1 })).toEqual(["stale-version", "/replaces"]);
    expect(await refused({ utilizationBaselineId: modelId })).toEqual([
      ...["baseline-of-another-kind", "/utilizationBaselineId"],
    ]);
    expect(await refused({ infectionBaselineId: pooledId + 1_000_000 })).toEqual(["not-found", "/infectionBaselineId"]);
    expect(await refused({ factors: [{ wardId: 2_000_000_000, factor: "beds", value: 1 }] })).toEqual([
      ...["not-found", "/wardId"],
    ]);
  });
  it("can be what the wards counted themselves in months that are over", async () => {
    const september = month.parse("2026-09");
    const period = { name: "Own October", fromMonth: october, toMonth: october };
    const none = await desk.refused(addOwnBaseline, { ...period, fromMonth: september, toMonth: september });
    expect(none.code).toBe("baseline-unusable");
    const stay = await desk.ask(endpoints.admitPatient, {
      ...{ wardId: east, identifier: "OWN-1", number: "S-OWN-1", admittedAt: "2026-10-20T08:00" },
    });
    await desk.ask(endpoints.insertCatheter, {
      ...{ stayId: stay.stayId, kind: "indwelling-urethral", insertedAt: "2026-10-28T09:00" },
      ...{ indication: "perioperative", sizeFr: 14, balloonMl: 10, record: fullRecord },
    });
    const rows = async () => (await desk.ask(listBaselines, {})).baselines.at(-1);
    const { baselineId } = await desk.ask(addOwnBaseline, period);
    // Censuses at 00:00 of 21 to 31 October, the catheter at those of the 29th to the 31st; nobody watched the ward.
    const counted = { ward: "3E", catheter_days: "3", patient_days: "11" };
    expect(await rows()).toMatchObject({ baselineId, kind: "own-period", rows: [{ ...counted, infections: "" }] });
    await desk.ask(endpoints.watchWard, { wardId: east, fromMonth: october, toMonth: null, edition: "us-2024" });
    await desk.ask(addOwnBaseline, { ...period, fromMonth: september });
    const note = "Not watched in 1 of 2 months, left out";
    expect(await rows()).toMatchObject({
      ...{ year: "2026-09 to 2026-10", rows: [{ ...counted, infections: "0", note }] },
    });
    const asked = { ...comparison({ utilizationBaselineId: baselineId, replaces: 2 }), fromMonth: november };
    await desk.ask(setComparison, asked);
    // As many of the days of November as in October had a catheter then: 3 of 11.
    const { numerator, denominator } = (await figure(november, "sur")) ?? {};
    const { value: days } = (await figure(november, "patient_days")) ?? {};
    expect(denominator).toBeCloseTo(((days ?? 0) * 3) / 11, 9);
    expect(numerator).toBeGreaterThan(3);
    const early = await desk.refused(addOwnBaseline, { ...period, toMonth: november });
    expect([early.code, early.errors[0]?.pointer]).toEqual(["month-not-over", "/toMonth"]);
    const turned = await desk.refused(addOwnBaseline, { ...period, toMonth: september });
    expect([turned.code, turned.errors[0]?.pointer]).toEqual(["period-impossible", "/fromMonth"]);
  });
});
