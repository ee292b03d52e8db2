import { describe, expect, it } from "vitest";
import { gapWords } from "../../../shared/gap-words.ts";
import { gapSentence } from "../../../src/domain/reports/gap-sentence.ts";
import { type Gap, gapsOf } from "../../../src/domain/reports/gaps.ts";
import { day, facts, findings, ward } from "./facts.ts";

const october = (date: number) => day("2026-10-01") + date - 1;
/** A ward that had patients, unless told otherwise. */
const busy = (code: string, said: Parameters<typeof ward>[1] = {}) => ward(code, { patientDays: 1, ...said });
const counted = (...dates: number[]) => dates.map((date) => ({ day: october(date), patientDays: 1, catheterDays: 0 }));
const short = (gaps: readonly Gap[]) => gaps.map(({ kind, wardId, count }) => `${kind} ${wardId} ${count}`);

describe("what is missing from a period", () => {
  it("is nothing where every day has its patients and everything is known", () => {
    const wards = [busy("A", { days: counted(1, 2, 3) })];
    expect(gapsOf(facts({ wards }), [{ wardId: 1, manualCountsMissing: 0, manualCounts: [] }], [])).toEqual([]);
  });

  it("is each census at which a patient was on no ward, by the ward that the day may belong to", () => {
    const off = (kind: "no-ward" | "outpatient", wardId: number | null, ...dates: number[]) =>
      dates.map((date) => ({ kind, wardId, day: october(date) }));
    // Two patients were away on the 5th.
    const uncounted = [
      ...off("no-ward", 1, 5, 4),
      ...off("no-ward", 1, 5),
      ...off("no-ward", null, 9),
      ...off("outpatient", 2, 10),
    ];
    const unknown = ward("C", { wardId: 3, inpatient: "unknown" });
    const wards = [busy("A"), busy("B", { wardId: 2 }), unknown];
    expect(gapsOf(facts({ uncounted: [...uncounted, ...off("no-ward", 3, 1)], wards }), [], [])).toEqual([
      { kind: "absence-at-census", wardId: 1, count: 3, days: [october(4), october(5)] },
      { kind: "outpatient-at-census", wardId: 2, count: 1, days: [october(10)] },
      { kind: "absence-at-census", wardId: 3, count: 1, days: [october(1)] },
      { kind: "absence-at-census", wardId: null, count: 1, days: [october(9)] },
      { kind: "setting-missing", wardId: 3, count: 1, days: [] },
    ]);
  });

  it("is a ward of which nobody said what it is; its days are not asked for", () => {
    const unknown = ward("A", { inpatient: "unknown", days: counted(1, 9) });
    expect(short(gapsOf(facts({ wards: [unknown] }), [], []))).toEqual(["setting-missing 1 1"]);
  });

  it("is a ward on which nobody was counted at all", () => {
    expect(short(gapsOf(facts({ wards: [ward("A"), busy("B")] }), [], []))).toEqual(["nobody-counted 1 1"]);
  });

  it("is a day without a patient between days with one, never before the first and after the last", () => {
    const gaps = gapsOf(facts({ wards: [busy("A", { days: counted(5, 6, 9) })] }), [], []);
    expect(gaps).toEqual([{ kind: "no-patient", wardId: 1, count: 2, days: [october(7), october(8)] }]);
  });

  it("is a count by hand that nobody made, and a doubt about catheters and beds; what blocks stands first", () => {
    const doubtful = findings("not-confirmed", "not-confirmed", "removal-between", "bed-held-long", "repeated-hour");
    const gaps = gapsOf(
      facts({ complete: false, wards: [busy("A")], findings: doubtful }),
      [{ wardId: 1, manualCountsMissing: 3, manualCounts: [] }],
      [],
    );
    expect(short(gaps)).toEqual([
      "period-not-over null 1",
      "manual-count-missing 1 3",
      "removal-between null 1",
      "not-confirmed null 2",
      "bed-held-long null 1",
    ]);
    expect(gaps.map(({ kind }) => gapWords[kind].blocks)).toEqual([true, false, false, false, false]);
  });

  it("is a day on which the manual count and the record say two things, with both sums", () => {
    const days = counted(1, 2, 3).map((one) => ({ ...one, patientDays: 4, catheterDays: 2 }));
    const manualCounts = [
      { day: october(1), patients: 4, catheters: 2 },
      { day: october(2), patients: 5, catheters: 2 },
      { day: october(3), patients: 4, catheters: 1 },
      { day: october(4), patients: 1, catheters: 0 },
    ];
    const wards = [busy("A", { days }), ward("B", { wardId: 2, inpatient: "unknown" })];
    const of = (wardId: number) => ({ wardId, manualCountsMissing: null, manualCounts });
    const gaps = gapsOf(facts({ wards }), [of(1), of(2)], []).filter(({ kind }) => kind === "manual-count-differs");
    const detail = "Patient-days: 10 by manual count, 8 electronic. Catheter-days: 3 by manual count, 4 electronic.";
    expect(gaps).toEqual([
      { kind: "manual-count-differs", wardId: 1, count: 3, days: [october(2), october(3), october(4)], detail },
    ]);
    expect(gaps.map(gapSentence)).toEqual([`On 3 days the manual count differs from the electronic count. ${detail}`]);
  });

  it("is a stay that only its moves tell of, by ward, where most stays have an admission of their own", () => {
    const gaps = (stays: number) =>
      short(gapsOf(facts({ wards: [busy("A")], undescribed: { stays, wardIds: [1, 2, 1] } }), [], []));
    expect(gaps(7)).toEqual(["stay-not-described 1 2", "stay-not-described 2 1"]);
    expect(gaps(6)).toEqual([]);
  });
});
