import { expect, it } from "vitest";
import type { FigureKey } from "../../../shared/figure-words.ts";
import type { Figure } from "../../../shared/month-report.ts";
import { markOf } from "../../../shared/sheet.ts";
import { monthDocument } from "../../../src/domain/reports/month-document.ts";
import { monthFigures } from "../../../src/domain/reports/month-figures.ts";
import { monthFiguresSheet } from "../../../src/domain/reports/month-figures-sheet.ts";
import { figureFacts, pooled, type ToldWard } from "./figure-facts.ts";

type Told = Readonly<Record<string, ToldWard>>;
const both = { infections: { baselineId: 7, baseline: pooled }, catheterDays: { baselineId: 7, baseline: pooled } };
const report = (told: Told, said?: Parameters<typeof figureFacts>[1]) => monthFigures(figureFacts(told, said));
/** A figure of a ward. */
function figure(told: Told, code: string, key: FigureKey, said?: Parameters<typeof figureFacts>[1]): Figure {
  const found = report(told, said)
    .wards.find((ward) => ward.code === code)
    ?.figures.find((one) => one.key === key);
  if (!found) throw new Error(`${code} has no ${key}`);
  return found;
}

it("figures of a month say of how many open cultures they hang, each once, and a count of 0 among them", () => {
  const [shared, one] = [
    { caseId: 1, as: "cannot-tell" },
    { caseId: 2, as: "pending" },
  ] as const;
  const said = { ...both, goal: 0.5 };
  const told = {
    A: { type: "medical", days: [4_000, 1_100] as const, openCultures: [shared, one] },
    B: { type: "medical", days: [4_000, 1_100] as const, openCultures: [shared] },
    C: { days: [9, 9] as const, infections: { value: null, reason: "Not watched." }, openCultures: [one] },
  };
  const open = (code: string, key: FigureKey) => figure(told, code, key, said).open;
  for (const key of ["infections", "rate", "population_rate", "sir", "cad"] as const)
    expect([key, open("A", key), open("B", key)]).toEqual([key, 2, 1]);
  expect(figure(told, "A", "rate", said).value).toBe(0);
  for (const key of ["patient_days", "catheter_days", "utilization", "sur", "cannot_tell", "dwell_median"] as const)
    expect([key, open("A", key)]).toEqual([key, null]);
  // A unit that is not under surveillance has no count that could change.
  expect([open("C", "infections"), figure({ A: told.C }, "A", "rate").open]).toEqual([null, null]);
  const { total } = report(told, said);
  expect(total.figures.find(({ key }) => key === "rate")?.open).toBe(2);
  expect(total.figures.find(({ key }) => key === "cannot_tell")?.value).toBe(1);
  const sheet = monthFiguresSheet(report(told, said));
  const row = sheet.rows.findIndex(([code, , key]) => code === "A" && key === "rate");
  expect(sheet.rows[row]?.[sheet.columns.findIndex(({ key }) => key === "not_final")]).toBe("not final: 2 open");
  expect(markOf(sheet, row, "value")).toBe("not final: 2 open");
  const [summary] = monthDocument(report(told, said), null).sheets;
  expect(summary && [markOf(summary, 0, "rate"), markOf(summary, null, "sir")]).toEqual(
    Array(2).fill("not final: 2 open"),
  );
  expect(summary && markOf(summary, 2, "rate")).toBeUndefined();
});
