import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import type { InputOf } from "../../shared/endpoint.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { ledgerOf } from "../databases/read-back.ts";
import { lookedAt } from "./alder-bay.ts";
import { type Bedside, bedsideOf } from "./bedside.ts";
import { type Desk, openDesk } from "./desk.ts";

const { confirmCatheter, correctCatheter, dischargePatient, readCatheter, removeCatheter, voidCatheter } = endpoints;
const reason = "Written down on the wrong line";

onEachDatabase("removals and corrections of catheters", (fresh) => {
  let desk: Desk;
  let bed: Bedside;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    bed = bedsideOf(desk);
  });
  afterAll(() => desk?.close());

  const read = (catheterId: number) => desk.ask(readCatheter, { catheterId });
  const notRemoved = async (input: InputOf<typeof removeCatheter>) => {
    const { status, code, errors } = await desk.refused(removeCatheter, input);
    return [status, code, ...errors.map(({ pointer }) => pointer)];
  };

  it("are removed at a time, with what was written down of it, once", async () => {
    const { catheterId, stayId, patientId } = await bed.withCatheter("EXACT");
    const record = {
      ...{ balloonWithdrawnMl: 9.5, catheterIntact: true, reason: "no-longer-needed" as const },
      remark: "Voided two hours later\nwithout trouble",
    };
    const input = { catheterId, removedAt: "2026-11-18T10:30", record, seenVersion: 1 };
    expect(await desk.tag(removeCatheter, input, { person: "bedside" })).toBe('"2"');
    const removedAt = Date.UTC(2026, 10, 18, 15, 30);
    const gone = { removedAt, removedAfterAt: null, removedBeforeAt: null };
    expect(await read(catheterId)).toMatchObject({ ...gone, removalRecord: record, version: 2 });
    expect(await notRemoved({ ...input, seenVersion: 2 })).toEqual([409, "already-removed", ""]);
    await desk.ask(dischargePatient, { stayId, dischargedAt: "2026-11-19T09:00", seenVersion: 1 });
    expect(await ledgerOf(desk.hospital.store, patientId)).toEqual([
      ...["2026-11-17 3E with catheter", "2026-11-18 3E with catheter", "2026-11-19 3E"],
    ]);
  });

  it("are found removed between two times, and count to the first of them", async () => {
    const { catheterId, stayId, patientId } = await bed.withCatheter("BETWEEN");
    const between = { removedAfterAt: "2026-11-17T20:00", removedBeforeAt: "2026-11-18T07:00" };
    const { version } = await desk.ask(removeCatheter, { catheterId, ...between, seenVersion: 1 });
    expect(version).toBe(2);
    expect(await read(catheterId)).toMatchObject({
      ...{ removedAt: null, removedAfterAt: Date.UTC(2026, 10, 18, 1), removedBeforeAt: Date.UTC(2026, 10, 18, 12) },
    });
    await desk.ask(dischargePatient, { stayId, dischargedAt: "2026-11-18T09:00", seenVersion: 1 });
    expect(await ledgerOf(desk.hospital.store, patientId)).toEqual([
      ...["2026-11-17 3E with catheter", "2026-11-18 3E"],
    ]);
  });

  it("are not removed at an unclear time, before the insertion, or in the future", async () => {
    const { catheterId } = await bed.withCatheter("UNCLEAR");
    const [early, late] = ["2026-11-17T20:00", "2026-11-18T07:00"];
    const tried = (times: Omit<InputOf<typeof removeCatheter>, "catheterId" | "seenVersion">) =>
      notRemoved({ catheterId, seenVersion: 1, ...times });
    expect(await tried({})).toEqual([422, "removal-unclear", "/removedAt"]);
    expect(await tried({ removedAfterAt: early })).toEqual([422, "removal-unclear", "/removedAfterAt"]);
    expect(await tried({ removedBeforeAt: late })).toEqual([422, "removal-unclear", "/removedAfterAt"]);
    const all = { removedAt: late, removedAfterAt: early, removedBeforeAt: late };
    expect(await tried(all)).toEqual([422, "removal-unclear", "/removedAfterAt"]);
    const turned = { removedAfterAt: late, removedBeforeAt: early };
    expect(await tried(turned)).toEqual([422, "end-before-start", "/removedBeforeAt"]);
    expect(await tried({ removedAt: "2026-11-16T08:59" })).toEqual([422, "removal-before-insertion", "/removedAt"]);
    const future = { removedAfterAt: "2026-11-20T11:00", removedBeforeAt: "2026-11-20T12:00" };
    expect(await tried(future)).toEqual([422, "in-the-future", "/removedAfterAt", "/removedBeforeAt"]);
    expect(await read(catheterId)).toMatchObject({ removedAt: null, removedAfterAt: null, version: 1 });
  });

  it("let out of the balloon what was put in: half to all of it is usual", async () => {
    const { catheterId } = await bed.withCatheter("BALLOON");
    const input = (balloonWithdrawnMl: number) => ({
      ...{ catheterId, removedAt: "2026-11-18T10:30", record: { balloonWithdrawnMl }, seenVersion: 1 },
    });
    // 10 mL were put in.
    for (const amount of [4, 12, 0])
      expect(await notRemoved(input(amount))).toEqual([422, "unusual-value", "/record/balloonWithdrawnMl"]);
    const confirm = ["/record/balloonWithdrawnMl"];
    expect(await notRemoved({ ...input(101), confirm })).toEqual([422, "out-of-bounds", ...confirm]);
    await desk.ask(removeCatheter, { ...input(4), confirm });
    expect((await read(catheterId)).removalRecord).toEqual({ balloonWithdrawnMl: 4 });
  });

  it("are corrected, and what was said before stays readable", async () => {
    const { catheterId, stayId } = await bed.withCatheter("CORRECT");
    const first = { catheterId, sizeFr: 16, insertedAt: "2026-11-16T09:30", number: "C-1", reason, seenVersion: 1 };
    expect(await desk.tag(correctCatheter, first, { person: "bedside" })).toBe('"2"');
    await desk.ask(correctCatheter, {
      catheterId,
      indication: null,
      number: null,
      reason: "Not known",
      seenVersion: 2,
    });
    const { corrections, ...now } = await read(catheterId);
    const insertedAt = Date.UTC(2026, 10, 16, 14, 30);
    expect(now).toMatchObject({ stayId, sizeFr: 16, insertedAt, number: null, indication: null, version: 3 });
    const { bedside, prevention } = desk.hospital.people;
    const entry = { entry: `catheter ${catheterId}`, replacedAt: lookedAt };
    expect(corrections).toMatchObject([
      {
        ...entry,
        version: 1,
        replacedBy: bedside,
        reason,
        before: { sizeFr: 14, insertedAt: "2026-11-16T14:00:00.000Z" },
      },
      { ...entry, version: 2, replacedBy: prevention, reason: "Not known", before: { sizeFr: 16, number: "C-1" } },
    ]);
  });

  it("are corrected with the checks of their first recording, and what is left alone is not judged again", async () => {
    const { stayId } = await bed.admit("CHECKS", "1950-02-28");
    const input = { ...bed.insertion(stayId), sizeFr: 22, confirm: ["/sizeFr"] };
    const { catheterId } = await desk.ask(endpoints.insertCatheter, input);
    await desk.ask(correctCatheter, { catheterId, balloonMl: 8, reason, seenVersion: 1 });
    const wrong = {
      ...{ indication: "habit", sizeFr: 20, balloonMl: 0.1, insertionRecord: { attempts: 5 } },
      ...{ removalRecord: { balloonWithdrawnMl: 101 }, removedAt: "2026-11-18T10:30" },
    };
    const refused = await desk.refused(correctCatheter, { catheterId, ...wrong, reason, seenVersion: 2 });
    expect(refused.errors.map(({ code, pointer }) => `${code} ${pointer}`)).toEqual([
      ...["indication-unknown /indication", "unusual-value /sizeFr", "out-of-bounds /balloonMl"],
      ...["unusual-value /insertionRecord/attempts", "out-of-bounds /removalRecord/balloonWithdrawnMl"],
    ]);
    const half = { catheterId, removedAfterAt: "2026-11-18T10:30", reason, seenVersion: 2 };
    expect((await desk.refused(correctCatheter, half)).code).toBe("removal-unclear");
    const unknown = { catheterId, insertedAt: null, reason, seenVersion: 2 };
    expect((await desk.refused(correctCatheter, unknown)).code).toBe("insertion-unknown");
    await desk.ask(correctCatheter, { ...unknown, inPlaceOnArrival: true });
  });

  it("are voided with their days, once, and stay readable", async () => {
    const { catheterId, stayId, patientId } = await bed.withCatheter("VOID");
    await desk.ask(dischargePatient, { stayId, dischargedAt: "2026-11-17T09:00", seenVersion: 1 });
    expect(await ledgerOf(desk.hospital.store, patientId)).toEqual(["2026-11-17 3E with catheter"]);
    const input = { catheterId, reason, seenVersion: 1 };
    expect(await desk.tag(voidCatheter, input)).toBe('"2"');
    expect(await ledgerOf(desk.hospital.store, patientId)).toEqual(["2026-11-17 3E"]);
    const story = await read(catheterId);
    expect(story).toMatchObject({ voidReason: reason, version: 2, sizeFr: 14, corrections: [{ version: 1, reason }] });
    for (const again of [
      desk.refused(voidCatheter, { ...input, seenVersion: 2 }),
      desk.refused(removeCatheter, { catheterId, removedAt: "2026-11-16T10:30", seenVersion: 2 }),
      desk.refused(correctCatheter, { catheterId, sizeFr: 16, reason, seenVersion: 2 }),
      desk.refused(confirmCatheter, { catheterId, at: "2026-11-16T10:30" }),
    ])
      expect(await again.then(({ status, code }) => [status, code])).toEqual([409, "entry-voided"]);
  });

  it("that came with the patient are seldom older than twelve weeks: an insertion long before has to be confirmed", async () => {
    const { stayId } = await bed.admit("LONG");
    const arrival = { stayId, kind: "indwelling-urethral" as const, foundAt: "2026-11-16T09:30" };
    const { catheterId } = await desk.ask(endpoints.recordCatheterOnArrival, arrival);
    const long = { catheterId, insertedAt: "2026-07-01T09:00", reason: "Read in the letter", seenVersion: 1 };
    const refused = await desk.refused(endpoints.correctCatheter, long);
    expect(refused.errors.map(({ code, pointer }) => [code, pointer])).toEqual([["unusual-value", "/insertedAt"]]);
    expect(await desk.ask(endpoints.correctCatheter, { ...long, confirm: ["/insertedAt"] })).toMatchObject({
      version: 2,
    });
  });

  it.each([
    ["removeCatheter", { removedAt: "2026-11-18T10:30" }],
    ["correctCatheter", { sizeFr: 12, reason }],
    ["voidCatheter", { reason }],
  ] as const)("%s wants the version that was seen, and shows the catheter as it is by now", async (name, more) => {
    const { catheterId, stayId } = await bed.withCatheter(`STALE-${name}`);
    await desk.ask(correctCatheter, { catheterId, sizeFr: 16, reason, seenVersion: 1 });
    const input = { catheterId, ...more, seenVersion: 1 } as never;
    const stale = await desk.refused(endpoints[name], input);
    expect([stale.status, stale.code]).toEqual([412, "stale-version"]);
    const insertedAt = "2026-11-16T14:00:00.000Z";
    expect(stale.current).toMatchObject({ catheterId, stayId, sizeFr: 16, balloonMl: 10, version: 2, insertedAt });
    const missing = await desk.refused(endpoints[name], input, { headers: { "if-match": "" } });
    expect([missing.status, missing.code]).toEqual([428, "version-missing"]);
  });
});
