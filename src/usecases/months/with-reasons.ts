import type { MonthReport } from "../../../shared/month-report.ts";
import { withoutReasons } from "../../domain/reports/completeness.ts";
import type { Actor } from "../act.ts";
import { seesEveryPatient } from "../reach.ts";

/** A report as a person may read it: what people wrote of dropped lines can name a patient. */
export function withReasons(actor: Actor, report: MonthReport): MonthReport {
  return seesEveryPatient(actor) ? report : { ...report, completeness: withoutReasons(report.completeness) };
}
