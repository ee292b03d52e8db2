import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import type { Endpoint, InputOf } from "../../shared/endpoint.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { auditOf } from "../databases/read-back.ts";
import { lookedAt } from "./alder-bay.ts";
import { type Bedside, bedsideOf } from "./bedside.ts";
import { type Desk, openDesk } from "./desk.ts";

const { correctSpecimen, dischargePatient, readCultures, recordSpecimen, voidSpecimen } = endpoints;
const reason = "The laboratory's further report";

onEachDatabase("specimens", (fresh) => {
  let desk: Desk;
  let bed: Bedside;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    bed = bedsideOf(desk);
  });
  afterAll(() => desk?.close());

  const refused = async <E extends Endpoint>(endpoint: E, input: InputOf<E>) => {
    const { status, errors } = await desk.refused(endpoint, input);
    return [status, ...errors.map(({ code, pointer }) => `${code} ${pointer}`)];
  };
  const urine = { kind: "urine", method: "culture", status: "final", collectedAt: "2026-11-18T09:00" } as const;
  const coli = { name: "Escherichia coli", count: ">100000" };
  const specimensOf = async (patientId: number) => (await desk.ask(readCultures, { patientId })).specimens;

  it("are kept as the laboratory wrote them, and read as what they are", async () => {
    const { patientId } = await bed.admit("KEPT");
    const skin = { name: "S. epidermidis", group: "bacterium" as const };
    const organisms = [
      coli,
      { name: "CANDIDA ALBICANS" },
      skin,
      { name: "Odd thing", group: "other" as const, count: "few" },
    ];
    const input = { ...urine, patientId, number: "U-77", organisms };
    expect(await desk.tag(recordSpecimen, input, { person: "bedside", key: "kept" })).toBe('"1"');
    const stored = await desk.ask(recordSpecimen, input, { person: "bedside", key: "kept" });
    expect(stored).toEqual({ specimenId: stored.specimenId, version: 1, setAside: [] });
    const [specimen, ...others] = await specimensOf(patientId);
    expect(others).toEqual([]);
    expect(specimen).toMatchObject({
      ...{ specimenId: stored.specimenId, patientId, version: 1, voidReason: null, kind: "urine", method: "culture" },
      ...{ collectedAt: Date.UTC(2026, 10, 18, 14), status: "final", number: "U-77", setAside: [] },
      ...{ writtenAt: lookedAt, writtenBy: desk.hospital.people.bedside },
    });
    expect(specimen?.organisms.map(({ organismId: _, ...one }) => one)).toEqual([
      { ...coli, group: "bacterium", isOnList: true, isCommensal: false, countKind: "bound" },
      {
        ...{ name: "CANDIDA ALBICANS", group: "yeast-or-mold", isOnList: true, isCommensal: false },
        ...{ count: null, countKind: "missing" },
      },
      // A group that the list has too changes nothing of what the list knows.
      { ...skin, isOnList: true, isCommensal: true, count: null, countKind: "missing" },
      { name: "Odd thing", group: "other", isOnList: false, isCommensal: false, count: "few", countKind: "words" },
    ]);
  });

  it("set aside what cannot be read, with its text, until somebody says what was meant", async () => {
    const { patientId } = await bed.admit("ASIDE");
    const organisms = [coli, { name: "Odd thing", count: "10.000" }];
    const { specimenId, setAside } = await desk.ask(recordSpecimen, { ...urine, patientId, organisms });
    expect(setAside).toEqual(["/organisms/1/name", "/organisms/1/count"]);
    expect((await specimensOf(patientId))[0]).toMatchObject({
      setAside,
      organisms: [{}, { name: "Odd thing", group: null, count: "10.000", countKind: "unreadable" }],
    });
    const said = [coli, { name: "Odd thing", group: "bacterium" as const, count: "10000" }];
    const change = { specimenId, organisms: said, reason, seenVersion: 1 };
    expect(await desk.ask(correctSpecimen, change)).toEqual({ specimenId, version: 2, setAside: [] });
    expect((await specimensOf(patientId))[0]).toMatchObject({
      organisms: [{}, { group: "bacterium", count: "10000", countKind: "number" }],
    });
  });

  it("are reported further, withdrawn and voided; what they said is kept", async () => {
    const { patientId } = await bed.admit("STORY");
    const { people, store } = desk.hospital;
    const pending = { ...urine, patientId, status: "pending" as const, organisms: [] };
    const { specimenId } = await desk.ask(recordSpecimen, pending, { person: "bedside" });
    const change = { specimenId, reason };
    await desk.ask(correctSpecimen, { ...change, status: "final", organisms: [coli], seenVersion: 1 });
    const { status, code, current } = await desk.refused(correctSpecimen, { ...change, seenVersion: 1 });
    expect([status, code]).toEqual([412, "stale-version"]);
    expect(current).toMatchObject({ specimenId, version: 2, collectedAt: "2026-11-18T14:00:00.000Z" });
    await desk.ask(correctSpecimen, { ...change, status: "withdrawn", seenVersion: 2 });
    await desk.ask(voidSpecimen, { ...change, seenVersion: 3 });
    expect(await refused(voidSpecimen, { ...change, seenVersion: 4 })).toEqual([409, "entry-voided "]);
    expect(await refused(correctSpecimen, { ...change, status: "final", seenVersion: 4 })).toEqual([
      ...[409, "entry-voided "],
    ]);
    const { specimens, corrections } = await desk.ask(readCultures, { patientId });
    expect(specimens).toMatchObject([
      { specimenId, version: 4, voidReason: reason, status: "withdrawn", organisms: [coli] },
    ]);
    expect(specimens[0]).toMatchObject({ writtenBy: people.bedside, writtenAt: lookedAt });
    const replaced = { entry: `specimen ${specimenId}`, replacedBy: people.prevention, replacedAt: lookedAt, reason };
    expect(corrections).toMatchObject([
      { ...replaced, version: 1, before: { status: "pending", organisms: [] } },
      { ...replaced, version: 2, before: { status: "final", organisms: [coli] } },
      { ...replaced, version: 3, before: { status: "withdrawn", collectedAt: "2026-11-18T14:00:00.000Z" } },
    ]);
    const { facilityId } = await store.read(({ db }) => db.patient.findUniqueOrThrow({ where: { id: patientId } }));
    const trail = (await auditOf(store, facilityId)).filter(({ patientIds }) => patientIds.includes(patientId));
    expect(trail.map(({ action }) => action).sort()).toEqual([
      ...["admit-patient", "correct-specimen", "correct-specimen", "record-specimen", "view-cultures", "void-specimen"],
    ]);
  });

  it("lie from 2 days before the first inpatient day to 4 days after discharge", async () => {
    const { patientId, stayId } = await bed.admit("DAYS");
    const on = (collectedAt: string) => ({ ...urine, patientId, collectedAt, organisms: [{ name: "No growth" }] });
    await desk.ask(dischargePatient, { stayId, dischargedAt: "2026-11-16T08:30", seenVersion: 1 });
    for (const time of ["2026-11-13T23:59", "2026-11-10T09:00"])
      expect(await refused(recordSpecimen, on(time))).toEqual([409, "outside-surveillance-days /collectedAt"]);
    expect(await refused(recordSpecimen, on("2026-11-20T10:06"))).toEqual([422, "in-the-future /collectedAt"]);
    await desk.ask(recordSpecimen, on("2026-11-14T00:00"));
    const { specimenId } = await desk.ask(recordSpecimen, on("2026-11-20T10:00"));
    const moved = { specimenId, collectedAt: "2026-11-13T12:00", reason, seenVersion: 1 };
    expect(await refused(correctSpecimen, moved)).toEqual([409, "outside-surveillance-days /collectedAt"]);
    // A correction that leaves the time alone does not ask for it again.
    await desk.ask(endpoints.voidStay, { stayId, reason, seenVersion: 2 });
    await desk.ask(correctSpecimen, { specimenId, status: "withdrawn", reason, seenVersion: 1 });
    const again = { specimenId, collectedAt: "2026-11-17T12:00", reason, seenVersion: 2 };
    expect(await refused(correctSpecimen, again)).toEqual([409, "outside-surveillance-days /collectedAt"]);
  });

  it("tell everything that contradicts itself at once, and never the name of what grew", async () => {
    const { patientId } = await bed.admit("CONTRA");
    const organisms = [coli, { name: "Candida albicans", group: "bacterium" as const }];
    const input = { ...urine, patientId, status: "pending" as const, collectedAt: "2026-11-01T09:00", organisms };
    expect(await refused(recordSpecimen, input)).toEqual([
      ...[409, "outside-surveillance-days /collectedAt", "result-contradicts /status"],
      "organism-group-contradicts /organisms/1/group",
    ]);
    const many = { ...urine, patientId, organisms: Array.from({ length: 13 }, () => coli) };
    expect(await refused(recordSpecimen, many)).toEqual([422, "too-many-organisms /organisms"]);
    await desk.ask(recordSpecimen, { ...many, organisms: many.organisms.slice(1) });
    const { detail } = await desk.refused(recordSpecimen, { ...input, collectedAt: urine.collectedAt });
    expect(detail).not.toMatch(/candida/i);
  });

  it("stay with the record they were made for, and are read with the one it was merged into", async () => {
    const [one, two] = [await bed.admit("FROM"), await bed.admit("INTO")];
    const { specimenId } = await desk.ask(recordSpecimen, { ...urine, patientId: one.patientId, organisms: [coli] });
    await desk.ask(endpoints.voidStay, { stayId: two.stayId, reason, seenVersion: 1 });
    const merge = { patientId: two.patientId, fromId: one.patientId };
    const { mergeId } = await desk.ask(endpoints.mergePatients, merge);
    expect(await specimensOf(two.patientId)).toMatchObject([{ specimenId, patientId: one.patientId }]);
    expect((await desk.ask(readCultures, { patientId: one.patientId })).patientId).toBe(two.patientId);
    await desk.ask(endpoints.unmergePatients, { patientId: two.patientId, mergeId, reason });
    expect(await specimensOf(two.patientId)).toEqual([]);
    expect(await specimensOf(one.patientId)).toMatchObject([{ specimenId }]);
  });
});
