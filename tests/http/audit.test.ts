import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { auditAction, auditActions, changingActions } from "../../shared/audit-words.ts";
import { call } from "../../shared/call.ts";
import { sealAudit } from "../../src/usecases/audit/seal-audit.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type AlderBay, identifiers } from "./alder-bay.ts";
import { type Door, openDoor } from "./door.ts";

type Person = keyof AlderBay["people"];

onEachDatabase("the audit trail", (fresh) => {
  let door: Door;
  let base: string;
  const as = (person: Person, key = "") => ({
    base,
    headers: { "x-demo-person": String(door.hospital.people[person]) },
    ...(key === "" ? {} : { key }),
  });

  beforeAll(async () => {
    door = await openDoor(await fresh());
    base = await door.app.listen({ host: "127.0.0.1", port: 0 });
  });
  afterAll(() => door?.close());

  const patientOf = async (identifier: string) => {
    const { patients } = await call(endpoints.findPatients, { identifier }, as("prevention"));
    return patients[0]?.patientId ?? 0;
  };

  it("has each view with whom it showed, newest first, and the search itself", async () => {
    const patientId = await patientOf(identifiers[0]);
    await call(endpoints.readPatient, { patientId }, as("bedside"));
    await call(endpoints.readRound, { wardId: door.hospital.wards["3E"] }, as("bedside"));
    const { entries } = await call(
      endpoints.searchAudit,
      { personId: door.hospital.people.bedside },
      as("administrator"),
    );
    expect(entries.map(({ action, personName, patientIds }) => [action, personName, patientIds])).toEqual([
      ["view-round", "Kit Sandoval", []],
      ["view-patient", "Kit Sandoval", [patientId]],
    ]);
    expect(entries.map(({ words }) => words)).toEqual(["Looked at a unit's round", "Looked at a patient's record"]);
    const own = await call(endpoints.searchAudit, { action: "search-audit" }, as("prevention"));
    expect(own.entries[0]).toMatchObject({ personId: door.hospital.people.administrator, patientIds: [] });
    expect(JSON.stringify([entries, own])).not.toContain(identifiers[0]);
  });

  it("is given in pages that miss nothing and repeat nothing", async () => {
    const all = await call(endpoints.searchAudit, { to: "2026-11-21T00:00:00Z", limit: 200 }, as("prevention"));
    const pages: string[] = [];
    for (let after: string | undefined; ; ) {
      const query = { to: "2026-11-21T00:00:00Z", limit: 3, ...(after === undefined ? {} : { after }) };
      const page = await call(endpoints.searchAudit, query, as("prevention"));
      pages.push(...page.entries.map(({ auditId }) => auditId));
      if (page.next === null) break;
      after = page.next;
    }
    // The searches came to it meanwhile, at the same instant of the test's clock.
    const old = all.entries.filter(({ action }) => action !== "search-audit").map(({ auditId }) => auditId);
    expect(pages.filter((id) => old.includes(id))).toEqual(old);
    expect(new Set(pages).size).toBe(pages.length);
    for (const after of ["x", "MTIz", "MTIzIA"])
      await expect(call(endpoints.searchAudit, { after }, as("prevention"))).rejects.toMatchObject({
        code: "cursor-unreadable",
      });
  });

  it("narrows to a period, and to a patient with the records merged into it", async () => {
    const [one, two] = [await patientOf(identifiers[0]), await patientOf(identifiers[1])];
    const access = await call(endpoints.readAccess, { patientId: two }, as("administrator"));
    expect(access.entries.every(({ patientIds }) => patientIds.includes(two))).toBe(true);
    expect(access.entries.map(({ action }) => action)).toContain("discharge-patient");
    const before = await call(endpoints.searchAudit, { patientId: one, to: "2026-10-01T00:00:00Z" }, as("prevention"));
    expect(before.entries).toEqual([]);
    await expect(call(endpoints.readAccess, { patientId: 2_000_000_000 }, as("prevention"))).rejects.toMatchObject({
      code: "not-found",
    });
  });

  it("takes the days of a period as those of the facility, both included", async () => {
    const find = (from: string, to: string) =>
      call(endpoints.searchAudit, { action: "set-up-facility", from, to }, as("prevention"));
    // It was set up at 20:00 on September 30 there, which is UTC-4.
    const [setUp] = (await find("2026-09-30", "2026-09-30")).entries;
    expect(setUp?.at).toBe(Date.UTC(2026, 9, 1));
    expect((await find("2026-10-01", "2026-12-31")).entries).toEqual([]);
    expect((await find("2026-09-01", "2026-09-29")).entries).toEqual([]);
    expect((await find("0000-01-01", "9999-12-31")).entries).toEqual([setUp]);
    expect((await find("0000-01-01T00:00:00Z", "9999-12-31T23:59:59-23:59")).entries).toEqual([setUp]);
    const refused = await door.get("/api/v1/audit?from=yesterday");
    expect([refused.status, refused.body.detail]).toEqual([422, expect.stringContaining("YYYY-MM-DD, or a time")]);
  });

  it("shows among a patient's entries that somebody searched for them, and refuses one who is elsewhere", async () => {
    const patientId = await patientOf(identifiers[0]);
    await call(endpoints.searchAudit, { patientId }, as("administrator"));
    const { entries } = await call(endpoints.readAccess, { patientId, limit: 1 }, as("prevention"));
    expect(entries).toMatchObject([{ action: "search-audit", patientIds: [patientId], details: { patientId } }]);
    const refusals = [];
    const elsewhere = { wardId: door.hospital.elsewhereWardId, identifier: "OTHER-1", number: "O1" };
    const foreign = { ...elsewhere, admittedAt: "2026-11-20T09:00" };
    const { patientId: hidden } = await call(endpoints.admitPatient, foreign, as("elsewhere", "o1"));
    for (const about of [hidden, 2_000_000_000]) {
      const asked = await door.get(`/api/v1/audit?patientId=${about}`, "administrator").expect(404);
      const access = await door.get(`/api/v1/patients/${about}/access`, "administrator").expect(404);
      refusals.push([asked, access].map(({ body }) => ({ ...body, instance: "" })));
    }
    expect(refusals[0]).toEqual(refusals[1]);
  });

  it("lists changes since a cursor to those who reach the patient, without what somebody typed", async () => {
    const ward = door.hospital.wards["3E"];
    await sealAudit(door.hospital.store);
    const start = await call(endpoints.listChanges, { after: 0, limit: 200 }, as("prevention"));
    const input = { wardId: ward, identifier: "ALDER-77", number: "S77", admittedAt: "2026-11-20T09:00" };
    const { patientId, stayId } = await call(endpoints.admitPatient, input, as("bedside", "k77"));
    // Not sealed yet: nobody is told of what may still not be the last of its second.
    expect((await call(endpoints.listChanges, { after: start.next }, as("bedside"))).changes).toEqual([]);
    const reason = "Came to the wrong ward";
    await call(endpoints.correctStay, { stayId, disposition: "Home", reason, seenVersion: 1 }, as("bedside"));
    await sealAudit(door.hospital.store);
    const seen = await call(endpoints.listChanges, { after: start.next }, as("bedside"));
    expect(seen.changes.map(({ action, patientIds, entries }) => [action, patientIds, entries.stayId])).toEqual([
      ["admit-patient", [patientId], stayId],
      ["correct-stay", [patientId], stayId],
    ]);
    expect(JSON.stringify(seen)).not.toContain(reason);
    expect(seen.more).toBe(false);
    expect((await call(endpoints.listChanges, { after: seen.next }, as("bedside"))).changes).toEqual([]);
    const elsewhere = await call(endpoints.listChanges, { after: start.next, limit: 200 }, as("elsewhere"));
    expect([elsewhere.changes, elsewhere.next]).toEqual([[], seen.next]);
  });

  it("lists changes in pages of which each goes on where the one before ended, and says what waits", async () => {
    const { people, wards, store } = door.hospital;
    await sealAudit(store);
    const start = await call(endpoints.listChanges, { after: 0, limit: 200 }, as("prevention"));
    expect(start.waiting).toBe(false);
    const admit = (wardId: number, number: string) => {
      const input = { wardId, identifier: number, number, admittedAt: "2026-11-20T09:00" };
      return call(endpoints.admitPatient, input, as("prevention", number));
    };
    const own: number[] = [];
    for (const number of ["C1", "C2", "C3"]) {
      own.push((await admit(wards["3E"], number)).patientId);
      await admit(wards["4N"], `${number}-4N`);
      await call(endpoints.readRound, { wardId: wards["3E"] }, as("bedside"));
    }
    const waiting = await call(endpoints.listChanges, { after: start.next }, as("bedside"));
    expect(waiting).toEqual({ changes: [], next: start.next, more: false, waiting: true });
    await sealAudit(store);
    const seen = [];
    let page = start;
    do {
      page = await call(endpoints.listChanges, { after: page.next, limit: 1 }, as("bedside"));
      expect([page.changes.length, page.waiting]).toEqual([1, false]);
      seen.push(...page.changes);
    } while (page.more);
    // Kit Sandoval works on 3E alone.
    expect(seen.map(({ action, patientIds }) => [action, patientIds])).toEqual(
      own.map((patientId) => ["admit-patient", [patientId]]),
    );
    expect(seen.every(({ personId }) => personId === people.prevention)).toBe(true);
    const all = await call(endpoints.listChanges, { after: start.next }, as("prevention"));
    expect([all.changes.length, all.more, all.next]).toEqual([6, false, page.next]);
    const fromNow = await call(endpoints.listChanges, {}, as("bedside"));
    expect(fromNow).toEqual({ changes: [], next: all.next, more: false, waiting: false });
  });

  it("is verified on demand", async () => {
    await sealAudit(door.hospital.store);
    const found = await call(endpoints.verifyAudit, {}, as("administrator"));
    expect(found).toMatchObject({ whole: true, firstFault: null, head: { number: found.sealed } });
  });
});

it("every action has its words, and those that only look are no changes", () => {
  expect(auditAction.options).toEqual(Object.keys(auditActions));
  const looking = auditAction.options.filter((action) => !changingActions.includes(action));
  expect(looking.every((action) => /^(view|find|search|compare)-/.test(action))).toBe(true);
});
