import type { Sheet, SheetColumn } from "../../../shared/sheet.ts";
import { dayText } from "../days/day-number.ts";
import { cautionsOf, countingSources } from "./cautions.ts";
import { areAllRejected } from "./missing-lines.ts";
import type { MonthFacts, WardFacts } from "./month-facts.ts";

const columns: SheetColumn[] = [
  { key: "ward", label: "Unit", kind: "text", unit: null },
  { key: "day", label: "Day", kind: "day", unit: null },
  { key: "patient_days", label: "Patient-days", kind: "whole", unit: "patient-days" },
  { key: "catheter_days", label: "Catheter-days", kind: "whole", unit: "catheter-days" },
];

/** Where every line of a catheter was rejected, no day without one is known. */
function isKnown({ catheterDays, missing }: WardFacts): boolean {
  return catheterDays > 0 || missing === undefined || !areAllRejected(missing.catheters);
}

/** The counts of every ward day with a patient, by ward and day. */
export function wardDaysSheet(facts: MonthFacts): Sheet {
  const rows = facts.wards.flatMap((ward) =>
    ward.days.map((day) => [ward.code, dayText(day.day), day.patientDays, isKnown(ward) ? day.catheterDays : null]),
  );
  return {
    id: "ward-days",
    title: `Unit days, ${facts.facility.name}`,
    period: `${dayText(facts.first)} to ${dayText(facts.last)}`,
    asOf: new Date(facts.asOf).toISOString(),
    sources: countingSources,
    columns,
    rows,
    total: null,
    cautions: cautionsOf(facts),
  };
}
