import { refuse } from "../../../shared/problems.ts";
import type { DayNumber } from "../../domain/days/day-number.ts";
import { openStays } from "../../store/timelines.ts";
import { ledgerPatients, type WardDayPatient } from "../../store/ward-days.ts";
import type { Act } from "../act.ts";
import { view } from "../view.ts";
import { openDays } from "./count-days.ts";
import { loadCountingRules } from "./counting-rules.ts";

/**
 * The patients behind one ward day: the rows that make its patient-days and catheter-days, by identifier. That they
 * were seen is written down before it is answered, and nobody is counted twice or lost who is discharged meanwhile.
 * Refuses `not-found` for a ward of another facility.
 */
export function loadWardDay(
  act: Act,
  { wardId, day }: { wardId: number; day: DayNumber },
): Promise<readonly WardDayPatient[]> {
  const { facilityId } = act.actor;
  return view(act, async (read, seen) => {
    const rules = await loadCountingRules(read, facilityId, () => ({ first: day, last: day }), [wardId]);
    if (rules.wards.length === 0) return refuse("not-found", "There is no such unit in this facility.");
    const stored = await ledgerPatients(read, wardId, day);
    const open = openDays(await openStays(read, facilityId, { until: act.now, wardIds: [wardId] }), rules, act.now)
      .filter((row) => row.wardId === wardId && row.day === day)
      .map(({ patientId, identifier, stayId, catheter }) => ({ patientId, identifier, stayId, catheter }));
    const patients = [...stored, ...open].sort((a, b) => (a.identifier < b.identifier ? -1 : 1));
    const patientIds = patients.map((patient) => patient.patientId);
    seen({ action: "view-ward-day", patientIds, details: { wardId, day } });
    return patients;
  });
}
