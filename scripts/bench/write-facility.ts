import type { Database } from "better-sqlite3";
import { benchFacility, benchZone } from "./history-size.ts";

/** Writes the fictional hospital with wards 1 to `wards` and the first person, without any patient. */
export function writeFacility(database: Database, wards: number): void {
  database
    .prepare("INSERT INTO facility (id, name, zone, recorded_at) VALUES (?, 'Alder Bay Hospital', ?, 0)")
    .run(benchFacility, benchZone);
  database
    .prepare(
      "INSERT INTO facility_census (facility_id, from_day, time, recorded_at, recorded_by) VALUES (?, 0, '00:00', 0, 1)",
    )
    .run(benchFacility);
  database.prepare("INSERT INTO person (id, name, recorded_at) VALUES (1, 'First person', 0)").run();
  const ward = database.prepare(
    "INSERT INTO ward (id, facility_id, code, recorded_at, recorded_by) VALUES (?, ?, ?, 0, 1)",
  );
  const setting = database.prepare(
    "INSERT INTO ward_setting (ward_id, from_day, name, setting, recorded_at, recorded_by) VALUES (?, 0, ?, ?, 0, 1)",
  );
  for (let id = 1; id <= wards; id++) {
    ward.run(id, benchFacility, `W${id}`);
    // One ward in fifty is an outpatient department, where nobody earns a patient-day.
    setting.run(id, `Ward ${id}`, id % 50 === 0 ? "outpatient" : "inpatient");
  }
}
