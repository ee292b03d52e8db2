import type { Sheet, SheetCell, SheetColumn } from "../../../shared/sheet.ts";
import { pool } from "../counting/pool.ts";
import { utilization } from "../counting/utilization.ts";
import { dayText } from "../days/day-number.ts";
import { cautionsOf, countingSources } from "./cautions.ts";
import type { MonthFacts, WardFacts } from "./month-facts.ts";

const columns: SheetColumn[] = [
  { key: "ward", label: "Ward", kind: "text", unit: null },
  { key: "name", label: "Name", kind: "text", unit: null },
  { key: "patient_days", label: "Patient-days", kind: "whole", unit: "patient-days" },
  { key: "catheter_days", label: "Catheter-days", kind: "whole", unit: "catheter-days" },
  { key: "utilization", label: "Device utilization ratio", kind: "ratio", unit: "catheter-days per patient-day" },
  { key: "note", label: "Note", kind: "text", unit: null },
];

/** Patient-days, catheter-days and utilization of each ward over a period, and of all wards together. */
export function monthSheet(facts: MonthFacts): Sheet {
  const counted = facts.wards.filter((ward) => ward.inpatient !== "unknown");
  const total = pool(["patientDays", "catheterDays"], counted);
  return {
    id: "month",
    title: `Patient-days and catheter-days, ${facts.facility.name}`,
    period: `${dayText(facts.first)} to ${dayText(facts.last)}`,
    asOf: new Date(facts.asOf).toISOString(),
    sources: countingSources,
    columns,
    rows: facts.wards.map(wardRow),
    total:
      counted.length === 0
        ? ["All wards", "", null, null, null, "no ward is counted"]
        : ["All wards", "", total.patientDays, total.catheterDays, utilization(total).value, ""],
    cautions: cautionsOf(facts),
  };
}

function wardRow(ward: WardFacts): SheetCell[] {
  if (ward.inpatient === "unknown") return [ward.code, ward.name, null, null, null, noteOf(ward)];
  const { patientDays, catheterDays } = ward;
  return [ward.code, ward.name, patientDays, catheterDays, utilization(ward).value, noteOf(ward)];
}

function noteOf(ward: WardFacts): string {
  if (ward.inpatient === "unknown") return "not counted: setting not given";
  if (ward.namedOnly) return "named only in moves, counted as inpatient";
  return ward.inpatient === "partly" ? "inpatient on some days only" : "";
}
