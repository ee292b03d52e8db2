import type { Sheet, SheetCell, SheetColumn } from "../../../shared/sheet.ts";
import { pool } from "../counting/pool.ts";
import { utilization } from "../counting/utilization.ts";
import { dayText } from "../days/day-number.ts";
import { cautionsOf, countingSources } from "./cautions.ts";
import { areAllRejected, type MissingLines, missingText } from "./missing-lines.ts";
import type { MonthFacts, WardFacts } from "./month-facts.ts";

const columns: SheetColumn[] = [
  { key: "ward", label: "Unit", kind: "text", unit: null },
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
        ? ["All units", "", null, null, null, "no unit is counted"]
        : ["All units", "", ...countsOf({ ...total, missing: facts.missing }), missingText(facts.missing)],
    cautions: cautionsOf(facts),
  };
}

function wardRow(ward: WardFacts): SheetCell[] {
  if (ward.inpatient === "unknown") return [ward.code, ward.name, null, null, null, noteOf(ward)];
  const note = [noteOf(ward), missingText(ward.missing)].filter((text) => text !== "").join("; ");
  return [ward.code, ward.name, ...countsOf(ward), note];
}

/** Where every line of a catheter was rejected, no catheter-day was counted and none is known: neither is a ratio. */
function countsOf(counted: Pick<WardFacts, "patientDays" | "catheterDays"> & { missing?: MissingLines | undefined }) {
  const { patientDays, catheterDays, missing } = counted;
  const isKnown = catheterDays > 0 || missing === undefined || !areAllRejected(missing.catheters);
  return [patientDays, isKnown ? catheterDays : null, isKnown ? utilization(counted).value : null];
}

function noteOf(ward: WardFacts): string {
  if (ward.inpatient === "unknown") return "not counted: setting not given";
  if (ward.namedOnly) return "named only in moves, counted as inpatient";
  return ward.inpatient === "partly" ? "inpatient on some days only" : "";
}
