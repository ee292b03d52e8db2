import { expect, it } from "vitest";
import { writeAudit } from "../../src/store/audit.ts";
import { type AuditQuestion, auditPage, findAudit, isWaiting } from "../../src/store/audit-search.ts";
import { recording } from "../../src/usecases/act.ts";
import { sealAudit } from "../../src/usecases/audit/seal-audit.ts";
import { dischargePatient } from "../../src/usecases/record/discharge-patient.ts";
import { mergePatients } from "../../src/usecases/record/merge-patients.ts";
import { type AlderBay, alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { rawQuery } from "../databases/raw-query.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

onEachDatabase("searching the audit trail", (fresh, kind) => {
  const shared = sharedStore(fresh);
  const find = (bay: AlderBay, question: Partial<AuditQuestion>) =>
    shared.store.read((read) => findAudit(read, { facilityId: bay.facilityId, limit: 100, ...question }));
  const view = (bay: AlderBay, time: string, patientIds: readonly number[], personId = bay.personId) =>
    shared.store.tx((tx) =>
      writeAudit(tx, { ...bay.by(time), personId }, { action: "view-round", patientIds, details: { time } }),
    );
  const timesOf = (found: readonly { details: Record<string, unknown> }[]) => found.map(({ details }) => details.time);

  it("takes the beginning of a period in and leaves its end out", async () => {
    const bay = await alderBay(shared.store);
    for (const time of ["2024-03-02 08:00", "2024-03-03 08:00", "2024-03-04 08:00"]) await view(bay, time, []);
    const [from, to] = [utc("2024-03-02 08:00"), utc("2024-03-04 08:00")];
    expect(timesOf(await find(bay, { from, to }))).toEqual(["2024-03-03 08:00", "2024-03-02 08:00"]);
    expect(timesOf(await find(bay, { from: from + 1, to: to + 1 }))).toEqual(["2024-03-04 08:00", "2024-03-03 08:00"]);
    // Years that a database writes otherwise, or has no text for.
    const ever = { from: Date.parse("0000-01-01T00:00:00Z"), to: 8_640_000_000_000_000 };
    expect(await find(bay, ever)).toEqual(await find(bay, {}));
    expect(await find(bay, { to: ever.from })).toEqual([]);
  });

  it("finds by person and action, and never those of another facility", async () => {
    const [bay, elsewhere] = [await alderBay(shared.store), await alderBay(shared.store)];
    await view(bay, "2024-03-02 08:00", []);
    await view(elsewhere, "2024-03-02 09:00", []);
    expect(timesOf(await find(bay, { action: "view-round" }))).toEqual(["2024-03-02 08:00"]);
    expect(await find(bay, { personId: elsewhere.personId })).toEqual([]);
    const foreign = await elsewhere.admit("P1", "2024-03-01 10:00");
    expect(await find(bay, { survivorId: foreign.patientId })).toEqual([]);
  });

  it("finds what is about a patient, once, with the records merged into it and without those taken out", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.stay("P1", "2024-03-01 10:00", "2024-03-01 12:00");
    const two = await bay.admit("P2", "2024-03-01 13:00");
    const three = await bay.admit("P3", "2024-03-01 13:00");
    await view(bay, "2024-03-02 08:00", [one.patientId]);
    await view(bay, "2024-03-02 09:00", [three.patientId, two.patientId]);
    await view(bay, "2024-03-02 10:00", [three.patientId]);
    const about = (survivorId: number) => find(bay, { survivorId, action: "view-round" });
    expect(timesOf(await about(two.patientId))).toEqual(["2024-03-02 09:00"]);
    await mergePatients(bay.at("2024-03-03 08:00"), { fromId: one.patientId, intoId: two.patientId });
    await view(bay, "2024-03-04 08:00", [one.patientId, two.patientId]);
    const [both, ...before] = await about(two.patientId);
    expect(both?.patientIds).toEqual([one.patientId, two.patientId]);
    expect(timesOf(before)).toEqual(["2024-03-02 09:00", "2024-03-02 08:00"]);
    expect(await about(one.patientId)).toEqual([]);
  });

  it("goes on after a place among entries of the same instant", async () => {
    const bay = await alderBay(shared.store);
    const times = Array.from({ length: 10 }, (_, i) => `2024-03-0${2 + Math.floor(i / 5)} 08:00`);
    for (const time of times) await view(bay, time, []);
    const all = await find(bay, { action: "view-round" });
    expect(timesOf(all)).toEqual(times.toReversed());
    for (const [i, { at, id }] of all.entries())
      expect(await find(bay, { action: "view-round", after: { at, id } })).toEqual(all.slice(i + 1));
    expect((await find(bay, { action: "view-round", limit: 3 })).map(({ id }) => id)).toEqual(
      all.slice(0, 3).map(({ id }) => id),
    );
  });

  it("says whether a change of a patient's record waits, and not for views or for others", async () => {
    const [bay, elsewhere] = [await alderBay(shared.store), await alderBay(shared.store)];
    const { patientId, stayId } = await bay.admit("P1", "2024-03-01 10:00");
    const waits = () => shared.store.read((read) => isWaiting(read, bay.facilityId, ["discharge-patient"]));
    expect(await waits()).toBe(false);
    await sealAudit(shared.store);
    await view(bay, "2024-03-02 08:00", [patientId]);
    await elsewhere.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    expect(await waits()).toBe(false);
    await dischargePatient(bay.at("2024-03-02 10:00"), { stayId, dischargedAt: utc("2024-03-02 09:00") });
    expect(await waits()).toBe(true);
    await sealAudit(shared.store);
    expect(await waits()).toBe(false);
  });

  /** Twenty thousand entries of a facility, a hundred of them about its five patients: enough for an index to pay. */
  async function manyEntries(): Promise<{ bay: AlderBay; patientId: number }> {
    const bay = await alderBay(shared.store);
    const ids: number[] = [];
    for (let i = 0; i < 5; i++) ids.push((await bay.admit(`P${i}`, "2024-03-01 10:00")).patientId);
    const numbers = "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 20000)";
    const at = kind === "sqlite" ? "1709280000000 + i" : "timestamp '2024-03-01 08:00' + i * interval '1 second'";
    await rawQuery(
      shared.url,
      `INSERT INTO audit_entry (id, at, facility_id, person_id, action, details)
       ${numbers} SELECT 'many-' || i, ${at}, ${bay.facilityId}, ${bay.personId} + i % 50, 'view-round', '{}' FROM n`,
    );
    await rawQuery(
      shared.url,
      `INSERT INTO audit_patient (audit_id, patient_id)
       ${numbers} SELECT 'many-' || i, ${ids[0]} + (i / 200) % 5 * (${ids[1]} - ${ids[0]}) FROM n WHERE i % 200 = 0`,
    );
    await rawQuery(shared.url, "ANALYZE");
    return { bay, patientId: ids[0] ?? 0 };
  }

  async function planOf(question: Omit<AuditQuestion, "limit">): Promise<string> {
    const { sql, values } = auditPage({ kind }, { limit: 51, ...question });
    const explain = kind === "sqlite" ? "EXPLAIN QUERY PLAN" : "EXPLAIN";
    const rows = await shared.store.read((read) =>
      read.sql.rows<Record<string, unknown>>(`${explain} ${sql}`, ...values),
    );
    return rows.map((row) => row.detail ?? row["QUERY PLAN"]).join("\n");
  }

  it("is led by an index to a person's and a patient's entries, and to where a page begins", async () => {
    const { bay, patientId } = await manyEntries();
    const { facilityId, personId } = bay;
    const after = { at: utc("2024-03-01 09:00"), id: "x" };
    const place = kind === "sqlite" ? /facility_id=\? AND at<\?/ : /Index Cond: .*facility_id = .* AND \(at <= /;
    expect(await planOf({ facilityId, after })).toMatch(place);
    expect(await planOf({ facilityId, personId })).toContain("audit_entry_person_id_at_idx");
    for (const question of [{}, { after }, { personId, after }]) {
      const plan = await planOf({ facilityId, survivorId: patientId, ...question });
      expect(plan).toMatch(/audit_entry_pkey|autoindex_audit_entry_1 \(id=\?\)/);
      expect(plan).not.toMatch(/_at_idx|Scan on audit_entry\b|SCAN audit_entry/);
    }
  });

  it("reads the acting person's name with each entry", async () => {
    const bay = await alderBay(shared.store);
    const act = bay.at("2024-03-02 08:00");
    await shared.store.tx((tx) => writeAudit(tx, recording(act), { action: "view-round", details: { wardId: 3 } }));
    const [entry] = await find(bay, { action: "view-round" });
    const { id: _, personName, ...rest } = entry ?? { id: "", personName: "" };
    expect(personName).not.toBe("");
    expect(rest).toEqual({
      ...{ at: utc("2024-03-02 08:00"), personId: bay.personId, action: "view-round" },
      ...{ details: { wardId: 3 }, patientIds: [], sealNumber: null },
    });
  });
});
