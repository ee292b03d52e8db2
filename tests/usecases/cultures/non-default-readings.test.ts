import { parse } from "csv-parse/sync";
import { expect, it } from "vitest";
import { month } from "../../../shared/day.ts";
import { sheetCsv } from "../../../src/csv/sheet-csv.ts";
import { determinationsOfCase } from "../../../src/store/determinations.ts";
import { recordSpecimen } from "../../../src/usecases/cultures/record-specimen.ts";
import { compareTwo, compareWards, readComparisonDocument } from "../../../src/usecases/months/compare-wards.ts";
import { readMonthDocument } from "../../../src/usecases/months/read-month-document.ts";
import { readMonthFigureSheet, readMonthFigures } from "../../../src/usecases/months/read-month-figures.ts";
import { setComparison } from "../../../src/usecases/months/set-comparison.ts";
import { insertCatheter } from "../../../src/usecases/record/insert-catheter.ts";
import { movePatient } from "../../../src/usecases/record/move-patient.ts";
import { addBaseline } from "../../../src/usecases/settings/add-baseline.ts";
import { addOwnBaseline } from "../../../src/usecases/settings/add-own-baseline.ts";
import { chooseReading } from "../../../src/usecases/settings/choose-reading.ts";
import { listBaselines } from "../../../src/usecases/settings/list-baselines.ts";
import { watchWard } from "../../../src/usecases/settings/watch-ward.ts";
import { describeWard } from "../../../src/usecases/wards/describe-ward.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";

const [march, april] = [month.parse("2024-03"), month.parse("2024-04")];
const [soon, later] = ["2024-03-20 10:00", "2024-05-03 10:00"];
const refusal = "Non-default reading: not comparable with a baseline of other hospitals.";

onEachDatabase("figures of a month with another reading than the edition's", (fresh) => {
  const shared = sharedStore(fresh);

  /** One catheter on unit A from 1 March to the end of April, under surveillance, with "every-day" chosen from April. */
  async function readOtherwiseFromApril(): Promise<AlderBay> {
    const bay = await alderBay(shared.store);
    const { stayId } = await bay.stay("P1", "2024-03-01 08:00", "2024-04-30 20:00");
    const catheter = {
      kind: "indwelling-urethral",
      insertedAt: utc("2024-03-01 09:00"),
      inPlaceOnArrival: false,
    } as const;
    await insertCatheter(bay.at(later), { stayId, ...catheter });
    const ward = { name: "A", type: "medical", setting: "inpatient", beds: 20 } as const;
    await describeWard(bay.at(soon), { ...ward, wardId: bay.a, fromDay: 19_723, reason: "Its type" });
    await watchWard(bay.at(soon), { wardId: bay.a, fromMonth: march, toMonth: null, edition: "us-2024" });
    const chosen = { editionId: "us-2024", option: "lookedFor", value: "every-day", reason: "Committee" } as const;
    await chooseReading(bay.at(soon), { ...chosen, fromMonth: april });
    return bay;
  }

  async function compareWith(bay: AlderBay, infectionBaselineId: number): Promise<void> {
    const chosen = { infectionBaselineId, utilizationBaselineId: null, goal: null, limits: "mid-p" } as const;
    await setComparison(bay.at(later), { ...chosen, fromMonth: march, factors: [], reason: "First", replaces: 0 });
  }

  const sirOf = async (bay: AlderBay, asked: typeof march) => {
    const { report } = await readMonthFigures(bay.at(later), { month: asked });
    const found = report.wards.find(({ code }) => code === "A")?.figures.find(({ key }) => key === "sir");
    return { value: found?.value, reason: found?.reason, cautions: report.cautions.join(" ") };
  };

  async function byWardType(bay: AlderBay): Promise<number> {
    const origin = { name: "Region", source: "Invented", year: "2023", edition: "1", definition: "x", population: "x" };
    const rows = [{ ward_type: "medical", rate_per_1000: "100" }];
    return (await addBaseline(bay.at(later), { kind: "pooled", origin, rows })).baselineId;
  }

  it("have no SIR against other hospitals and say so, on the page and in every file; earlier months keep theirs", async () => {
    const bay = await readOtherwiseFromApril();
    await compareWith(bay, await byWardType(bay));
    expect(await sirOf(bay, march)).toMatchObject({ value: 0, reason: null });
    expect((await sirOf(bay, march)).cautions).not.toContain("Non-default");
    const inApril = await sirOf(bay, april);
    expect(inApril).toMatchObject({ value: null, reason: refusal });
    expect(inApril.cautions).toContain("Non-default reading of the definitions");
    const { document } = await readMonthDocument(bay.at(later), { month: april });
    expect(JSON.stringify(document)).toContain("Non-default reading of the definitions");
    const rows = document.sheets.flatMap((sheet) => parse(sheetCsv(sheet), { columns: true }) as object[]);
    expect(rows.filter((row) => JSON.stringify(row).includes(refusal)).length).toBeGreaterThan(0);
  });

  it("leave a culture in scope as far back as the chosen window reaches", async () => {
    const cultureOf = async (isChosen: boolean) => {
      const bay = await alderBay(shared.store);
      await watchWard(bay.at(soon), { wardId: bay.a, fromMonth: march, toMonth: null, edition: "ecdc-2017" });
      const week = { editionId: "ecdc-2017", option: "windowDays", value: 7, reason: "Committee" } as const;
      if (isChosen) await chooseReading(bay.at(soon), { ...week, fromMonth: april });
      const { patientId, stayId } = await bay.admit("P1", "2024-04-02 08:00");
      await movePatient(bay.at("2024-04-11 09:00"), {
        ...{ stayId, movedAt: utc("2024-04-11 08:00"), wardId: bay.b, bed: null },
      });
      const { specimenId } = await recordSpecimen(bay.at("2024-04-16 12:00"), {
        ...{ patientId, kind: "urine", method: "culture", status: "pending", organisms: [] },
        collectedAt: utc("2024-04-16 08:00"),
      });
      const [kept] = await shared.store.read((read) => determinationsOfCase(read, bay.facilityId, specimenId));
      return [kept?.state, kept?.mayCount];
    };
    // Moved 5 days before the culture, to a unit that is not under surveillance.
    expect(await cultureOf(false)).toEqual(["out-of-scope", "[]"]);
    const [state, mayCount] = await cultureOf(true);
    expect([state, mayCount]).toEqual(["pending", expect.stringContaining('"month":"2024-04"')]);
  });

  it("name the reading in a column of their own, after the last one that was there", async () => {
    const bay = await readOtherwiseFromApril();
    const point = "When “there was no such sign” is known of a window: On every day of it";
    const named = async (asked: typeof march) => {
      const { sheet } = await readMonthFigureSheet(bay.at(later), { month: asked });
      const rows = parse(sheetCsv(sheet), { columns: true }) as Record<string, string>[];
      const readings = new Set(
        rows.flatMap(({ figure, non_default_readings }) => (figure === "rate" ? non_default_readings : [])),
      );
      const { document } = await readMonthDocument(bay.at(later), { month: asked });
      const [summary] = parse(sheetCsv(document.sheets[0] ?? sheet), { columns: true }) as Record<string, string>[];
      return [...readings, summary?.non_default_readings];
    };
    expect(await named(march)).toEqual(["", ""]);
    // Unit A, unit B that nobody watches, and all of them.
    expect(await named(april)).toEqual([point, "", point]);
    const { columns } = (await readMonthFigureSheet(bay.at(later), { month: april })).sheet;
    const keys = columns.map(({ key }) => key);
    expect(keys.indexOf("non_default_readings")).toBe(keys.indexOf("not_final") + 1);
  });

  it("make a baseline of one's own that says so, where it is listed and where months are compared with it", async () => {
    const bay = await readOtherwiseFromApril();
    const point = "When “there was no such sign” is known of a window: On every day of it";
    const { baselineId } = await addOwnBaseline(bay.at(later), { name: "Spring", fromMonth: march, toMonth: april });
    const found = (await listBaselines(bay.at(later))).baselines.find((one) => one.baselineId === baselineId);
    expect(found?.definition).toBe(
      `The editions by which each ward was watched in those months; non-default reading of the definitions: ${point}`,
    );
    expect(found?.rows).toMatchObject([{ ward: "A", note: "Non-default reading of the definitions in 1 of 2 months" }]);
    await compareWith(bay, baselineId);
    expect((await sirOf(bay, april)).cautions).toContain(`non-default reading of the definitions: ${point}`);
    const own = await readOtherwiseFromApril();
    await addOwnBaseline(own.at(later), { name: "March", fromMonth: march, toMonth: march });
    expect(JSON.stringify((await listBaselines(own.at(later))).baselines)).not.toContain("on-default");
  });

  it("are not tested by SIR between two months, which a baseline of one's own allows", async () => {
    const bay = await readOtherwiseFromApril();
    const asked = { first: "A", firstFrom: march, firstTo: march, second: "A", secondFrom: april, secondTo: april };
    await compareWith(bay, await byWardType(bay));
    const { first, second, tests } = await compareTwo(bay.at(later), asked);
    // 30 catheter-days of March at 100 per 1,000 (2 to 31 March at the midnight census).
    expect([first.predicted, second.predicted]).toEqual([expect.closeTo(3, 12), null]);
    expect(tests.find(({ what }) => what === "sir")?.sentence).toContain(refusal);
    const { wards } = await compareWards(bay.at(later), { from: march, to: april, ward: "A" });
    expect(wards.find(({ code }) => code === "A")?.note).toContain(
      "Non-default reading of the definitions in 1 of 2 months.",
    );
    const { document } = await readComparisonDocument(bay.at(later), { from: march, to: april, ward: "A" });
    expect(JSON.stringify(document)).toContain("Non-default reading of the definitions in 1 of 2 months.");
    const own = await readOtherwiseFromApril();
    const { baselineId } = await addOwnBaseline(own.at(later), { name: "March", fromMonth: march, toMonth: march });
    await compareWith(own, baselineId);
    expect((await sirOf(own, april)).reason).not.toBe(refusal);
  });
});
