import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { auditOf, ledgerOf } from "../databases/read-back.ts";
import { identifiers, lookedAt } from "./alder-bay.ts";
import { type Desk, openDesk } from "./desk.ts";

const reason = "Two people after all";
const { admitPatient, dischargePatient, findPatients, mergePatients, readPatient, unmergePatients } = endpoints;

onEachDatabase("patients", (fresh) => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
  });
  afterAll(() => desk?.close());

  const stay = async (identifier: string, from: number, to: number, ward: "3E" | "4N" = "3E") => {
    const at = (day: number) => `2026-11-${String(day).padStart(2, "0")}T08:00`;
    const wardId = desk.hospital.wards[ward];
    const admitted = await desk.ask(admitPatient, { wardId, identifier, number: identifier, admittedAt: at(from) });
    await desk.ask(dischargePatient, { stayId: admitted.stayId, dischargedAt: at(to), seenVersion: 1 });
    return admitted;
  };
  const found = async (identifier: string, person: "prevention" | "bedside" | "elsewhere") =>
    (await desk.ask(findPatients, { identifier }, { person })).patients.map((patient) => patient.identifier);
  const audit = async (action: string) => {
    const act = await desk.ask(endpoints.searchAudit, { action: action as never, limit: 200 });
    return act.entries;
  };

  it("are found by the hospital's number, which stands in bodies only", async () => {
    expect(findPatients.method).toBe("POST");
    // The number of a signature is nobody's.
    for (const { path, query } of Object.values(endpoints))
      expect(`${path.replace("/signatures/{number}", "")} ${Object.keys(query.shape)}`).not.toMatch(
        /identifier|number\b/i,
      );
    const { patients } = await desk.ask(findPatients, { identifier: ` ${identifiers[0]} ` }, { person: "bedside" });
    expect(patients).toEqual([
      { patientId: expect.any(Number), identifier: identifiers[0], birthDay: null, sex: null },
    ]);
    expect(await found("ALDER-10", "prevention")).toEqual([]);
    expect(await found("%", "prevention")).toEqual([]);
  });

  it("are hidden from who does not reach them, and the look is in the audit trail all the same", async () => {
    // ALDER-1002 left 3E on 6 November and the hospital on 10 November.
    expect(await found(identifiers[1], "bedside")).toEqual([]);
    expect(await found(identifiers[0], "elsewhere")).toEqual([]);
    expect(await found(identifiers[1], "prevention")).toEqual([identifiers[1]]);
    const looks = await audit("find-patients");
    expect(looks.slice(0, 1)).toMatchObject([{ personId: desk.hospital.people.prevention, details: { found: 1 } }]);
    expect(looks.find(({ personId }) => personId === desk.hospital.people.bedside)).toMatchObject({
      ...{ patientIds: [], details: { found: 0 } },
    });
    expect(JSON.stringify(looks)).not.toContain("ALDER");
    for (const person of ["manager", "administrator"] as const)
      expect((await desk.refused(findPatients, { identifier: identifiers[0] }, { person })).status).toBe(403);
    const { patients } = await desk.ask(findPatients, { identifier: identifiers[1] });
    const hidden = await desk.refused(readPatient, { patientId: patients[0]?.patientId ?? 0 }, { person: "bedside" });
    const absent = await desk.refused(readPatient, { patientId: 2_000_000_000 }, { person: "bedside" });
    expect({ ...hidden, instance: "" }).toEqual({ ...absent, instance: "" });
    expect([hidden.status, hidden.code]).toEqual([404, "not-found"]);
  });

  it("are read with everything that is recorded of them, and the view is in the audit trail", async () => {
    const { patients } = await desk.ask(findPatients, { identifier: identifiers[1] });
    const patientId = patients[0]?.patientId ?? 0;
    const record = await desk.ask(readPatient, { patientId });
    const catheterId = record.catheters[0]?.catheterId ?? 0;
    const { noteId } = await desk.ask(endpoints.confirmCatheter, { catheterId, at: "2026-11-08T10:00" });
    const after = await desk.ask(readPatient, { patientId });
    expect([after.survivorId, after.stays.length, after.wardStays.length]).toEqual([patientId, 1, 2]);
    expect(after.wardStays.map(({ wardId, stayId }) => [wardId, stayId])).toEqual(
      [desk.hospital.wards["3E"], desk.hospital.wards["4N"]].map((wardId) => [wardId, after.stays[0]?.stayId]),
    );
    expect(after.notes).toMatchObject([
      { noteId, catheterId, kind: "confirmation", at: Date.UTC(2026, 10, 8, 15), writtenAt: lookedAt, version: 1 },
    ]);
    const [view] = await audit("view-patient");
    expect(view).toMatchObject({ personId: desk.hospital.people.prevention, patientIds: [patientId] });
  });

  it("are merged and unmerged: days go to the survivor and come back exactly", async () => {
    const { store } = desk.hospital;
    const one = await stay("TWIN-A", 2, 4);
    const two = await stay("TWIN-B", 6, 8, "4N");
    const [days, more] = [
      ["2026-11-03 3E", "2026-11-04 3E"],
      ["2026-11-07 4N", "2026-11-08 4N"],
    ];
    const merge = { patientId: one.patientId, fromId: two.patientId };
    const { mergeId } = await desk.ask(mergePatients, merge);
    expect(await ledgerOf(store, one.patientId)).toEqual([...days, ...more]);
    expect(await ledgerOf(store, two.patientId)).toEqual([]);
    const record = await desk.ask(readPatient, { patientId: two.patientId });
    expect([record.patient.identifier, record.survivorId]).toEqual(["TWIN-B", one.patientId]);
    expect(record.survivorIdentifier).toBe("TWIN-A");
    expect(record.stays.map(({ patientId }) => patientId)).toEqual([one.patientId, two.patientId]);
    const [from, into] = [two.patientId, one.patientId];
    const told = { mergeId, fromId: from, fromIdentifier: "TWIN-B", intoId: into, intoIdentifier: "TWIN-A" };
    const merges = [{ ...told, mergedAt: lookedAt, mergedBy: desk.hospital.people.prevention }];
    for (const patientId of [from, into]) expect((await desk.ask(readPatient, { patientId })).merges).toEqual(merges);
    const [view] = await audit("view-patient");
    expect([...(view?.patientIds ?? [])].sort()).toEqual([into, from].sort());
    expect(await found("TWIN-B", "prevention")).toEqual(["TWIN-B"]);
    const again = await desk.refused(mergePatients, merge);
    expect([again.status, again.code]).toEqual([409, "already-merged"]);
    // The address names the record that was merged into.
    const wrong = await desk.refused(unmergePatients, { patientId: two.patientId, mergeId, reason });
    expect([wrong.status, wrong.code]).toEqual([404, "not-found"]);
    await desk.ask(unmergePatients, { patientId: one.patientId, mergeId, reason });
    for (const patientId of [from, into])
      expect(await desk.ask(readPatient, { patientId })).toMatchObject({ merges: [], survivorId: patientId });
    expect(await ledgerOf(store, one.patientId)).toEqual(days);
    expect(await ledgerOf(store, two.patientId)).toEqual(more);
    const undone = await desk.refused(unmergePatients, { patientId: one.patientId, mergeId, reason });
    expect([undone.status, undone.code]).toEqual([404, "not-found"]);
    const act = await auditOf(store, (await desk.ask(endpoints.readFacility, {})).facilityId, lookedAt);
    expect(act.filter(({ action }) => /merge/.test(action)).map(({ action }) => action)).toEqual([
      "merge-patients",
      "unmerge-patients",
    ]);
  });

  it("stand with the survivor's number on the story of a catheter that the merged record had", async () => {
    const one = await stay("STORY-A", 2, 4);
    const two = await stay("STORY-B", 6, 8);
    const three = await stay("STORY-C", 10, 12);
    const found = { stayId: two.stayId, kind: "indwelling-urethral", foundAt: "2026-11-06T09:00" } as const;
    const { catheterId } = await desk.ask(endpoints.recordCatheterOnArrival, found);
    const whose = async () => {
      const { patientId, identifier } = await desk.ask(endpoints.readCatheter, { catheterId });
      return [patientId, identifier];
    };
    expect(await whose()).toEqual([two.patientId, "STORY-B"]);
    await desk.ask(mergePatients, { patientId: one.patientId, fromId: two.patientId });
    expect(await whose()).toEqual([one.patientId, "STORY-A"]);
    // The record into which it was merged is merged itself: both merges stand, and the last survivor is told.
    await desk.ask(mergePatients, { patientId: three.patientId, fromId: one.patientId });
    expect(await whose()).toEqual([three.patientId, "STORY-C"]);
    const { merges } = await desk.ask(readPatient, { patientId: three.patientId });
    expect(merges.map(({ fromIdentifier, intoIdentifier }) => [fromIdentifier, intoIdentifier])).toEqual([
      ["STORY-B", "STORY-A"],
      ["STORY-A", "STORY-C"],
    ]);
    // The older one can be undone by itself: it takes its own record out, and the other merge stays.
    const [older] = merges;
    await desk.ask(unmergePatients, { patientId: older?.intoId ?? 0, mergeId: older?.mergeId ?? 0, reason });
    expect(await whose()).toEqual([two.patientId, "STORY-B"]);
    expect((await desk.ask(readPatient, { patientId: three.patientId })).merges).toHaveLength(1);
  });

  it("are not merged while they overlap, with themselves, with who is elsewhere, or by the bedside", async () => {
    const one = await stay("APART-A", 2, 5);
    const two = await stay("APART-B", 4, 8);
    const refused = async (fromId: number) => {
      const { status, code, errors } = await desk.refused(mergePatients, { patientId: one.patientId, fromId });
      return [status, code, errors[0]?.pointer];
    };
    expect((await refused(two.patientId)).slice(0, 2)).toEqual([409, "stay-overlaps"]);
    expect(await refused(one.patientId)).toEqual([422, "same-patient", "/fromId"]);
    expect((await refused(2_000_000_000)).slice(0, 2)).toEqual([404, "not-found"]);
    const input = { wardId: desk.hospital.elsewhereWardId, identifier: "FAR", number: "FAR" };
    const admission = { ...input, admittedAt: "2026-11-12T08:00" };
    const stranger = await desk.ask(admitPatient, admission, { person: "elsewhere" });
    expect((await refused(stranger.patientId)).slice(0, 2)).toEqual([404, "not-found"]);
    const bedside = await desk.refused(
      mergePatients,
      { patientId: one.patientId, fromId: two.patientId },
      { person: "bedside" },
    );
    expect([bedside.status, bedside.code]).toEqual([403, "not-permitted"]);
  });
});
