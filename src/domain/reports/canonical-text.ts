import canonicalize from "canonicalize";
import { figureWords } from "../../../shared/figure-words.ts";
import type { MonthReport } from "../../../shared/month-report.ts";
import { signedItems } from "./completeness.ts";

/**
 * The one text of a value: JSON with sorted names, no white space, and numbers as ECMAScript writes them, so that equal
 * values have equal bytes on every machine and database. Throws an Error for what JSON cannot say, such as NaN.
 * Source: RFC 8785, JSON Canonicalization Scheme.
 */
export function canonicalText(value: object): string {
  const text = canonicalize(value);
  if (text === undefined) throw new Error("the value has no JSON");
  return text;
}

/**
 * What of a report is signed for: without the instant of reading and the figures that are of that instant, and without
 * the sentences that say how to read it. It is the same as long as the record of the month is the same.
 */
export function reportContent(report: MonthReport): Omit<MonthReport, "asOf" | "cautions" | "sources"> {
  const { asOf: _, cautions: __, sources: ___, completeness, ...said } = lastingReport(report);
  return { ...said, completeness: signedItems(completeness) };
}

/** A report without the figures of the instant at which it was read: what is signed, and how older texts are shown. */
export function lastingReport(report: MonthReport): MonthReport {
  const { wards, total } = report;
  return {
    ...report,
    wards: wards.map((ward) => ({ ...ward, figures: lasting(ward.figures) })),
    total: { ...total, figures: lasting(total.figures) },
  };
}

/** The figures that do not change by waiting. */
export function lasting<F extends MonthReport["total"]["figures"][number]>(figures: readonly F[]): F[] {
  return figures.filter(({ key }) => !("momentary" in figureWords[key]));
}
