import { describe, expect, it } from "vitest";
import { monthDifferences } from "../../../src/domain/reports/month-differences.ts";
import { monthFigures } from "../../../src/domain/reports/month-figures.ts";
import { figureFacts, pooled, type ToldWard } from "./figure-facts.ts";

type Told = Readonly<Record<string, ToldWard>>;
const between = (signed: Told, now: Told) =>
  monthDifferences(monthFigures(figureFacts(signed)), monthFigures(figureFacts(now))).map(
    ({ ward, what, signed: was, now: is }) => [ward, what, was, is],
  );

const told = { A: { days: [400, 200] as const, infections: { value: 1 } } };

describe("the differences from what was signed", () => {
  it("are none when the record of the month is the same, whatever time has passed", () => {
    expect(between(told, { A: { ...told.A, open: 7 } })).toEqual([]);
  });

  it("are each figure with what was signed and what it is now, of the ward and of all", () => {
    const changed = { A: { ...told.A, infections: { value: 2 } } };
    const rows = [
      ["CAUTIs", 1, 2],
      ["CAUTI rate", 5, 10],
      ["Population rate", 25, 50],
    ];
    expect(between(told, changed)).toEqual([...rows.map((row) => ["A", ...row]), ...rows.map((row) => [null, ...row])]);
  });

  it("tell what changed behind a value that stayed", () => {
    const rows = between({ A: { days: [400, 200] } }, { A: { days: [200, 100] } });
    expect(rows).toContainEqual(["A", "Device utilization ratio", "200 of 400", "100 of 200"]);
  });

  it("print at the digits of the figure, with more where two would print alike, and never with the noise of a float", () => {
    const both = { infections: { baselineId: 7, baseline: pooled }, goal: 0.7 };
    const at = (days: readonly [number, number]) =>
      monthFigures(figureFacts({ A: { type: "medical", days, infections: { value: 4 } } }, both));
    const rows = monthDifferences(at([4_000, 1_103]), at([4_000, 1_104]));
    const sides = rows.flatMap(({ signed, now }) => [signed, now]).map(String);
    for (const side of sides) expect(side).not.toMatch(/\d\.\d{10}/);
    const of = (figure: string) => rows.find((row) => row.ward === "A" && row.figure === figure);
    // 4 / 3.309 and 4 / 3.312; 0.27575 and 0.27600 as ratios of days.
    expect(of("sir")).toMatchObject({ signed: 1.209, now: 1.208 });
    expect(of("utilization")).toMatchObject({ signed: 0.2757, now: 0.276 });
  });

  it("tell of open cultures, and not of those that an older text could not name", () => {
    const open = [{ caseId: 1, as: "pending" }] as const;
    const [was, now] = [told, { A: { ...told.A, openCultures: open } }].map((one) => monthFigures(figureFacts(one)));
    if (!was || !now) throw new Error("two reports are compared");
    expect(monthDifferences(was, now).find(({ figure }) => figure === "rate")).toMatchObject({
      ...{ signed: "1 of 200", now: "1 of 200, not final: 1 open" },
    });
    const older = structuredClone(was);
    for (const figure of [...older.wards.flatMap(({ figures }) => figures), ...older.total.figures]) delete figure.open;
    expect(monthDifferences(older, now)).toEqual([]);
  });

  it("tell of wards that came and went, of words about them, and of the baseline", () => {
    expect(between(told, { ...told, B: {} })).toContainEqual(["B", "Unit", "not in the month", "in the month"]);
    expect(between(told, { A: { ...told.A, type: "medical" } })).toEqual([["A", "Type of unit", null, "medical"]]);
    const by = [{ insertedIn: "theater", insertedBy: undefined }] as const;
    expect(between(told, { A: { ...told.A, inserted: by } })).toContainEqual([
      "A",
      "Where catheters were inserted",
      "none",
      "OR 1",
    ]);
    const [was, now] = [{}, { infections: { baselineId: 1, baseline: pooled } }].map((said) =>
      monthFigures(figureFacts(told, said)),
    );
    if (!was || !now) throw new Error("two reports are compared");
    expect(monthDifferences(was, now)[0]).toMatchObject({
      ...{ wardId: null, what: "Baseline of infections", signed: null, now: "Alder Bay region" },
    });
  });

  it("leave all wards out where a report is of some only", () => {
    const [was, now] = [told, { A: { days: [400, 201] as const, infections: { value: 1 } } }].map((one) =>
      monthFigures(figureFacts(one)),
    );
    if (!was || !now) throw new Error("two reports are compared");
    const some = { ...now, total: { ...now.total, figures: [] } };
    expect(monthDifferences(was, some).map(({ ward }) => ward)).not.toContain(null);
  });
});
