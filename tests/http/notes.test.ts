import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import type { Endpoint, InputOf } from "../../shared/endpoint.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { lookedAt } from "./alder-bay.ts";
import { type Bedside, bedsideOf } from "./bedside.ts";
import { type Desk, openDesk } from "./desk.ts";

const { confirmCatheter, readCatheter, recordCareCheck, recordUrineOutput, removeCatheter, reviewCatheter } = endpoints;

onEachDatabase("notes about a catheter", (fresh) => {
  let desk: Desk;
  let bed: Bedside;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    bed = bedsideOf(desk);
  });
  afterAll(() => desk?.close());

  const notesOf = async (catheterId: number) => (await desk.ask(readCatheter, { catheterId })).notes;
  const refused = async <E extends Endpoint>(endpoint: E, input: InputOf<E>) => {
    const { status, errors } = await desk.refused(endpoint, input);
    return [status, ...errors.map(({ code, pointer }) => `${code} ${pointer}`)];
  };
  const at = "2026-11-17T09:00";

  it("keep it for a reason, and nothing else has one", async () => {
    const { catheterId } = await bed.withCatheter("REASON");
    const keep = { catheterId, at, outcome: "keep" as const };
    expect(await refused(reviewCatheter, keep)).toEqual([422, "indication-missing /indication"]);
    expect(await refused(reviewCatheter, { ...keep, indication: "habit" })).toEqual([
      ...[422, "indication-unknown /indication"],
    ]);
    for (const outcome of ["ask", "remove"] as const)
      expect(await refused(reviewCatheter, { ...keep, outcome, indication: "perioperative" })).toEqual([
        ...[422, "field-unreadable /indication"],
      ]);
    const said = { ...keep, indication: "end-of-life", remark: "As the family\nwishes" };
    expect(await desk.tag(reviewCatheter, said, { person: "bedside", key: "keep" })).toBe('"1"');
    const { noteId } = await desk.ask(reviewCatheter, said, { person: "bedside", key: "keep" });
    expect(await notesOf(catheterId)).toEqual([
      {
        ...{ noteId, catheterId, version: 1, voidReason: null, kind: "review", at: Date.UTC(2026, 10, 17, 14) },
        ...{ writtenAt: lookedAt, writtenBy: desk.hospital.people.bedside, outcome: "keep" },
        ...{ indication: "end-of-life", items: null, amountMl: null, remark: "As the family\nwishes" },
      },
    ]);
  });

  it("ask, and are answered by a later one; then the catheter comes out", async () => {
    const { catheterId } = await bed.withCatheter("ASK");
    await desk.ask(reviewCatheter, { catheterId, at, outcome: "ask" });
    const answer = { catheterId, at: "2026-11-17T11:00", outcome: "keep" as const, indication: "perioperative" };
    await desk.ask(reviewCatheter, answer);
    await desk.ask(reviewCatheter, { catheterId, at: "2026-11-18T09:00", outcome: "remove" });
    expect((await notesOf(catheterId)).map(({ outcome, indication }) => [outcome, indication])).toEqual([
      ["ask", null],
      ["keep", "perioperative"],
      ["remove", null],
    ]);
    // A review that wants it out is no removal; and it takes no version of the catheter from whoever removes it.
    const story = await desk.ask(readCatheter, { catheterId });
    expect([story.removedAt, story.version, story.lastSeenAt]).toEqual([null, 1, Date.UTC(2026, 10, 18, 14)]);
    await desk.ask(removeCatheter, { catheterId, removedAt: "2026-11-18T09:30", seenVersion: 1 });
  });

  it("are put in the order in which things happened, and keep when they were written down", async () => {
    const { catheterId } = await bed.withCatheter("LATE");
    await desk.ask(confirmCatheter, { catheterId, at: "2026-11-19T09:00" });
    await desk.ask(confirmCatheter, { catheterId, at: "2026-11-16T09:00" }, { person: "bedside" });
    const { bedside, prevention } = desk.hospital.people;
    expect(await notesOf(catheterId)).toMatchObject([
      { kind: "confirmation", at: Date.UTC(2026, 10, 16, 14), writtenAt: lookedAt, writtenBy: bedside },
      { kind: "confirmation", at: Date.UTC(2026, 10, 19, 14), writtenAt: lookedAt, writtenBy: prevention },
    ]);
    const story = await desk.ask(readCatheter, { catheterId });
    expect(story.lastSeenAt).toBe(Date.UTC(2026, 10, 19, 14));
  });

  it("check the items of the ward's bundle and no others; what was not looked at is not recorded", async () => {
    const { catheterId } = await bed.withCatheter("CARE");
    const wrong = { "closed-system": "kept", dusting: "kept", ironing: "broken" } as const;
    expect(await refused(recordCareCheck, { catheterId, at, items: wrong })).toEqual([
      ...[422, "item-unknown /items/dusting", "item-unknown /items/ironing"],
    ]);
    const items = { "closed-system": "kept", "bag-position": "broken", "sample-from-port": "not-applicable" } as const;
    await desk.ask(recordCareCheck, { catheterId, at, items, remark: "Bag lay on the bed" });
    expect(await notesOf(catheterId)).toMatchObject([{ kind: "care-check", items, remark: "Bag lay on the bed" }]);
  });

  it("hold amounts of urine within bounds, and more than usual when somebody has checked it", async () => {
    const { catheterId } = await bed.withCatheter("URINE");
    const amount = (amountMl: number, confirm?: string[]) => ({
      ...{ catheterId, at, amountMl },
      ...(confirm ? { confirm } : {}),
    });
    expect(await refused(recordUrineOutput, amount(-1, ["/amountMl"]))).toEqual([422, "out-of-bounds /amountMl"]);
    expect(await refused(recordUrineOutput, amount(10_001, ["/amountMl"]))).toEqual([422, "out-of-bounds /amountMl"]);
    expect(await refused(recordUrineOutput, amount(2001))).toEqual([422, "unusual-value /amountMl"]);
    expect(await refused(recordUrineOutput, amount(2001, ["/amount"]))).toEqual([422, "unusual-value /amountMl"]);
    for (const input of [amount(0), amount(2000), amount(2001, ["/amountMl"]), amount(33.5)])
      await desk.ask(recordUrineOutput, input);
    expect((await notesOf(catheterId)).map(({ amountMl }) => amountMl)).toEqual([0, 2000, 2001, 33.5]);
  });

  it("lie between the insertion and the removal, both included", async () => {
    const { catheterId } = await bed.withCatheter("PLACE");
    const removal = { removedAfterAt: "2026-11-18T09:00", removedBeforeAt: "2026-11-18T12:00" };
    await desk.ask(removeCatheter, { catheterId, ...removal, seenVersion: 1 });
    for (const time of ["2026-11-16T08:59", "2026-11-18T09:01"]) {
      const { status, code, errors } = await desk.refused(confirmCatheter, { catheterId, at: time });
      expect([status, code]).toEqual([409, "not-in-place"]);
      expect(errors).toMatchObject([{ pointer: "/at", other: `catheter ${catheterId}` }]);
    }
    const early = await desk.refused(confirmCatheter, { catheterId, at: "2026-11-16T08:59" });
    expect(early.detail).toContain("It was in place from 2026-11-16T09:00.");
    const late = await desk.refused(confirmCatheter, { catheterId, at: "2026-11-18T12:00" });
    expect(late.detail).toContain("It was in place until 2026-11-18T09:00.");
    for (const time of ["2026-11-16T09:00", "2026-11-18T09:00"])
      await desk.ask(confirmCatheter, { catheterId, at: time });
    expect(await refused(confirmCatheter, { catheterId, at: "2026-11-20T10:06" })).toEqual([422, "in-the-future /at"]);
  });

  it("stand against a removal, an insertion and a discharge that contradict them", async () => {
    const { catheterId, stayId } = await bed.withCatheter("AGAINST");
    await desk.ask(confirmCatheter, { catheterId, at });
    const removal = { catheterId, seenVersion: 1, removedAt: "2026-11-17T08:59" };
    expect(await refused(removeCatheter, removal)).toEqual([409, "seen-after-removal /removedAt"]);
    const between = { removedAfterAt: "2026-11-17T08:00", removedBeforeAt: "2026-11-17T12:00" };
    expect(await refused(removeCatheter, { catheterId, seenVersion: 1, ...between })).toEqual([
      ...[409, "seen-after-removal /removedAfterAt"],
    ]);
    const change = { catheterId, insertedAt: "2026-11-17T09:01", reason: "Misread", seenVersion: 1 };
    expect(await refused(endpoints.correctCatheter, change)).toEqual([409, "seen-before-insertion /insertedAt"]);
    const discharge = { stayId, dischargedAt: "2026-11-17T08:59", seenVersion: 1 };
    expect(await refused(endpoints.dischargePatient, discharge)).toEqual([409, "outside-stay /dischargedAt"]);
    await desk.ask(removeCatheter, { ...removal, removedAt: at });
  });

  it("tell everything that is wrong at once", async () => {
    const { catheterId } = await bed.withCatheter("ALL");
    const before = "2026-11-16T08:30";
    expect(await refused(reviewCatheter, { catheterId, at: before, outcome: "keep" })).toEqual([
      ...[409, "not-in-place /at", "indication-missing /indication"],
    ]);
    const items = { dusting: "kept" } as const;
    expect(await refused(recordCareCheck, { catheterId, at: before, items })).toEqual([
      ...[409, "not-in-place /at", "item-unknown /items/dusting"],
    ]);
    expect(await refused(recordUrineOutput, { catheterId, at: before, amountMl: 3000 })).toEqual([
      ...[409, "not-in-place /at", "unusual-value /amountMl"],
    ]);
  });
});
