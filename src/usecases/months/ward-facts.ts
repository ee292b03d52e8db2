import { describedFrom, inForceOn } from "../../domain/counting/ward-setting.ts";
import type { WardFacts } from "../../domain/reports/month-facts.ts";
import type { DayRange, WardDaySum } from "../../store/ward-days.ts";
import type { WardRow } from "../../store/wards.ts";

/** A ward over a period: what it was, and its counted days. `hadPatientsBefore`: there were some before it is described. */
export function wardFacts(
  ward: WardRow,
  { days, hadPatientsBefore }: { days: DayRange; hadPatientsBefore: boolean },
  sums: readonly WardDaySum[],
): WardFacts {
  const ordered = [...sums].sort((a, b) => a.day - b.day);
  const sum = (key: "patientDays" | "catheterDays") => ordered.reduce((all, day) => all + day[key], 0);
  return {
    wardId: ward.id,
    code: ward.code,
    name: inForceOn(ward.settings, days.last)?.name ?? ward.code,
    inpatient: inpatientOver(ward, days, hadPatientsBefore),
    namedOnly: ward.namedOnly,
    patientDays: sum("patientDays"),
    catheterDays: sum("catheterDays"),
    days: ordered.map(({ day, patientDays, catheterDays }) => ({ day, patientDays, catheterDays })),
  };
}

/**
 * Days before a ward is described are days before it was there, unless it had patients: a ward with patients was there,
 * though its description begins after the period.
 */
function inpatientOver(
  ward: WardRow,
  { first: start, last }: DayRange,
  hadPatientsBefore: boolean,
): WardFacts["inpatient"] {
  const opened = describedFrom(ward.settings);
  if (opened === undefined) return "unknown";
  if (opened > last) return hadPatientsBefore ? "unknown" : "none";
  const first = Math.max(start, opened);
  const changes = ward.settings.filter((s) => s.fromDay > first && s.fromDay <= last);
  const settings = [inForceOn(ward.settings, first), ...changes].map((s) => s?.setting ?? null);
  if (settings.includes(null)) return "unknown";
  if (settings.every((setting) => setting === "inpatient")) return first === start ? "yes" : "partly";
  return settings.includes("inpatient") ? "partly" : "none";
}
