import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { day } from "../../shared/day.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { ledgerOf } from "../databases/read-back.ts";
import { type Bedside, bedsideOf } from "./bedside.ts";
import { type Desk, openDesk } from "./desk.ts";
import { fullRecord } from "./inputs.ts";

const { insertCatheter, readCatheter, recordCatheterOnArrival } = endpoints;

onEachDatabase("insertions of catheters", (fresh) => {
  let desk: Desk;
  let bed: Bedside;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    bed = bedsideOf(desk);
  });
  afterAll(() => desk?.close());

  it("are read back with all that was written down, and count", async () => {
    const { stayId, patientId } = await bed.admit("FULL");
    const input = { ...bed.insertion(stayId), number: "C-77" };
    expect(await desk.tag(insertCatheter, input, { person: "bedside", key: "full" })).toBe('"1"');
    const { catheterId, version } = await desk.ask(insertCatheter, input, { person: "bedside", key: "full" });
    expect(version).toBe(1);
    expect(await desk.tag(readCatheter, { catheterId }, { person: "bedside" })).toBe('"1"');
    expect(await desk.ask(readCatheter, { catheterId })).toMatchObject({
      ...{ catheterId, stayId, version: 1, voidReason: null, kind: "indwelling-urethral", number: "C-77" },
      // 09:00 Eastern Standard Time.
      ...{ insertedAt: Date.UTC(2026, 10, 16, 14), inPlaceOnArrival: false, indication: "perioperative" },
      ...{ removedAt: null, removedAfterAt: null, removedBeforeAt: null, lastSeenAt: null },
      ...{ sizeFr: 14, balloonMl: 10, insertionRecord: fullRecord, removalRecord: null },
      ...{ notes: [], corrections: [] },
    });
    await desk.ask(endpoints.dischargePatient, { stayId, dischargedAt: "2026-11-18T09:00", seenVersion: 1 });
    expect(await ledgerOf(desk.hospital.store, patientId)).toEqual([
      "2026-11-17 3E with catheter",
      "2026-11-18 3E with catheter",
    ]);
  });

  it("record what the policy requires: each missing field is named, other kinds have no such policy", async () => {
    const { stayId } = await bed.admit("MISSING");
    const bare = { stayId, kind: "indwelling-urethral" as const, insertedAt: bed.insertedAt };
    const none = await desk.refused(insertCatheter, bare);
    expect([none.status, none.code]).toEqual([422, "record-incomplete"]);
    const own = ["/sizeFr", "/balloonMl", "/indication"];
    const record = ["patientResponse", "urineReturnedMl", "urineAppearance", "insertedBy", "insertedIn"];
    expect(none.errors.map(({ pointer }) => pointer)).toEqual([...own, ...record.map((field) => `/record/${field}`)]);
    expect(new Set(none.errors.map(({ code }) => code))).toEqual(new Set(["record-incomplete"]));
    const { insertedBy: _, ...others } = fullRecord;
    const one = await desk.refused(insertCatheter, { ...bed.insertion(stayId), record: others });
    expect(one.errors.map(({ pointer }) => pointer)).toEqual(["/record/insertedBy"]);
    await desk.ask(insertCatheter, { ...bare, kind: "suprapubic" });
  });

  it("take an unusual value once it is confirmed, each for itself", async () => {
    const { stayId } = await bed.admit("UNUSUAL", "1950-02-28");
    const record = { ...fullRecord, attempts: 4, urineReturnedMl: 1500 };
    const input = { ...bed.insertion(stayId), sizeFr: 22, balloonMl: 30, record };
    const pointers = ["/sizeFr", "/balloonMl", "/record/attempts", "/record/urineReturnedMl"];
    const unusual = async (confirm: string[]) => {
      const refused = await desk.refused(insertCatheter, { ...input, confirm });
      expect([refused.status, refused.code]).toEqual([422, "unusual-value"]);
      return refused.errors.map(({ pointer }) => pointer);
    };
    expect(await unusual([])).toEqual(pointers);
    expect(await unusual(["/sizeFr", "/record/attempts", "/elsewhere"])).toEqual([
      "/balloonMl",
      "/record/urineReturnedMl",
    ]);
    const { catheterId } = await desk.ask(insertCatheter, { ...input, confirm: pointers });
    const kept = await desk.ask(readCatheter, { catheterId });
    expect([kept.sizeFr, kept.balloonMl, kept.insertionRecord]).toEqual([22, 30, record]);
  });

  it("of infants are small: usual with their day of birth, unusual with that of an adult", async () => {
    const small = { sizeFr: 6, balloonMl: 1.5 };
    const infant = await bed.admit("INFANT", "2026-05-04");
    const { catheterId } = await desk.ask(insertCatheter, { ...bed.insertion(infant.stayId), ...small });
    expect(await desk.ask(readCatheter, { catheterId })).toMatchObject(small);
    const adult = await bed.admit("ADULT", "1950-02-28");
    const refused = await desk.refused(insertCatheter, { ...bed.insertion(adult.stayId), ...small });
    expect(refused.errors.map(({ code, pointer }) => [code, pointer])).toEqual([
      ["unusual-value", "/sizeFr"],
      ["unusual-value", "/balloonMl"],
    ]);
    expect(refused.errors[0]?.detail).toContain("adult's catheter is usually 12 to 16 Fr");
    // Nobody knows the age: what is usual at any age is usual.
    const unknown = await bed.admit("UNKNOWN-AGE");
    await desk.ask(insertCatheter, { ...bed.insertion(unknown.stayId), ...small });
  });

  it("of other kinds have no usual size, and still none that cannot be", async () => {
    const { stayId } = await bed.admit("NEPHROSTOMY", "1950-02-28");
    const tube = { stayId, kind: "nephrostomy" as const, insertedAt: bed.insertedAt };
    const { catheterId } = await desk.ask(insertCatheter, { ...tube, sizeFr: 8, balloonMl: 3 });
    expect(await desk.ask(readCatheter, { catheterId })).toMatchObject({ kind: "nephrostomy", sizeFr: 8 });
    expect((await desk.refused(insertCatheter, { ...tube, sizeFr: 80 })).code).toBe("out-of-bounds");
  });

  it("refuse what cannot be, also when it is confirmed, and never repeat the value", async () => {
    const { stayId } = await bed.admit("BOUNDS");
    const confirm = ["/sizeFr", "/balloonMl", "/record/attempts", "/record/urineReturnedMl"];
    const record = { ...fullRecord, attempts: 0, urineReturnedMl: 987_654 };
    const input = { ...bed.insertion(stayId), sizeFr: 31, balloonMl: 100.5, record, confirm };
    const refused = await desk.refused(insertCatheter, input);
    expect([refused.status, refused.code]).toEqual([422, "out-of-bounds"]);
    expect(refused.errors.map(({ pointer }) => pointer)).toEqual(confirm);
    expect(JSON.stringify(refused)).not.toMatch(/987.?654/);
  });

  it("tell everything that is wrong at once", async () => {
    const { stayId } = await bed.admit("ALL");
    const { patientResponse: _, ...record } = fullRecord;
    const input = { ...bed.insertion(stayId), indication: "habit", sizeFr: 2, balloonMl: 40, record };
    const refused = await desk.refused(insertCatheter, input);
    expect(refused.errors.map(({ code, pointer }) => [code, pointer])).toEqual([
      ["record-incomplete", "/record/patientResponse"],
      ["indication-unknown", "/indication"],
      ["out-of-bounds", "/sizeFr"],
      ["unusual-value", "/balloonMl"],
    ]);
  });

  it("name a reason of the common list or of the policy of the ward on that day", async () => {
    const { stayId } = await bed.admit("REASON");
    const input = { ...bed.insertion(stayId), indication: "spinal-unit" };
    const unknown = await desk.refused(insertCatheter, input);
    expect([unknown.status, unknown.code, unknown.errors[0]?.pointer]).toEqual([
      ...[422, "indication-unknown", "/indication"],
    ]);
    const wardId = desk.hospital.wards["3E"];
    const { body } = await desk.ask(endpoints.readPolicy, { wardId });
    const own = { code: "spinal-unit", label: "Protocol of the spinal unit", source: "Agreed with the unit" };
    const changed = { ...body, indications: [...body.indications, own] };
    const said = { wardId, replaces: 0, reason: "Agreed with the unit", body: changed };
    await desk.ask(endpoints.setPolicy, { ...said, fromDay: day.parse("2026-11-17") });
    expect((await desk.refused(insertCatheter, input)).code).toBe("indication-unknown");
    const later = { ...input, insertedAt: "2026-11-17T09:00", indication: "spinal-unit" };
    const { catheterId } = await desk.ask(insertCatheter, later);
    expect((await desk.ask(readCatheter, { catheterId })).indication).toBe("spinal-unit");
    // Not accepted, and recorded all the same.
    await desk.ask(insertCatheter, { ...input, indication: "incontinence" });
  });

  it("lie in the stay", async () => {
    const { stayId } = await bed.admit("STAY");
    const early = await desk.refused(insertCatheter, { ...bed.insertion(stayId), insertedAt: "2026-11-16T07:59" });
    expect([early.status, early.code, early.errors[0]?.pointer]).toEqual([409, "outside-stay", "/insertedAt"]);
    const future = await desk.refused(insertCatheter, { ...bed.insertion(stayId), insertedAt: "2026-11-20T10:06" });
    expect([future.status, future.code, future.errors[0]?.pointer]).toEqual([422, "in-the-future", "/insertedAt"]);
  });

  it("before the stay are three fields: who came with one, when it was seen, and why, if anybody knows", async () => {
    const { stayId, patientId } = await bed.admit("ARRIVAL");
    const found = { stayId, kind: "indwelling-urethral" as const, foundAt: "2026-11-16T08:30" };
    const unknown = await desk.refused(recordCatheterOnArrival, { ...found, indication: "habit" });
    expect([unknown.status, unknown.code, unknown.errors[0]?.pointer]).toEqual([
      ...[422, "indication-unknown", "/indication"],
    ]);
    const early = await desk.refused(recordCatheterOnArrival, { ...found, foundAt: "2026-11-20T10:06" });
    expect([early.code, early.errors[0]?.pointer]).toEqual(["in-the-future", "/foundAt"]);
    const key = { key: "arrival" };
    expect(await desk.tag(recordCatheterOnArrival, found, key)).toBe('"1"');
    const { catheterId } = await desk.ask(recordCatheterOnArrival, found, key);
    expect(await desk.ask(readCatheter, { catheterId })).toMatchObject({
      ...{ stayId, insertedAt: null, inPlaceOnArrival: true, lastSeenAt: Date.UTC(2026, 10, 16, 13, 30) },
      ...{ indication: null, sizeFr: null, balloonMl: null, insertionRecord: null, version: 1 },
    });
    await desk.ask(endpoints.dischargePatient, { stayId, dischargedAt: "2026-11-17T09:00", seenVersion: 1 });
    expect(await ledgerOf(desk.hospital.store, patientId)).toEqual(["2026-11-17 3E with catheter"]);
  });

  it("found in place on arrival are found while the patient was here", async () => {
    const { stayId } = await bed.admit("FOUND");
    await desk.ask(endpoints.dischargePatient, { stayId, dischargedAt: "2026-11-17T09:00", seenVersion: 1 });
    const found = { stayId, kind: "indwelling-urethral" as const };
    for (const foundAt of ["2026-11-16T07:59", "2026-11-17T09:01"]) {
      const refused = await desk.refused(recordCatheterOnArrival, { ...found, foundAt, indication: "habit" });
      expect(refused.errors.map(({ code, pointer, other }) => [code, pointer, other])).toEqual([
        ["outside-stay", "/foundAt", `stay ${stayId}`],
        ["indication-unknown", "/indication", undefined],
      ]);
    }
    await desk.ask(recordCatheterOnArrival, { ...found, foundAt: "2026-11-16T08:00" });
  });
});
