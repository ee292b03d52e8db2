import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type Desk, openDesk } from "./desk.ts";
import { type Hourless, withoutHours } from "./hourless.ts";

const { correctCatheter, correctNote, correctSpecimen, correctStay, correctWardStay, readCatheter } = endpoints;
const { readCultures, readPatient, readRound, readWardPatients, reviewCatheter, voidNote } = endpoints;
const reason = "Read in the chart";

/** A time on the clocks of the hospital, which are five hours behind UTC in these days. */
const local = (text: string) => Date.parse(`${text}-05:00`);

onEachDatabase("a time without an hour", (fresh) => {
  let desk: Desk;
  let one: Readonly<Record<"inPlace" | "removed", Hourless>>;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    one = await withoutHours(desk);
  });
  afterAll(() => desk?.close());

  const read = async ({ catheterId }: Hourless) => desk.ask(readCatheter, { catheterId });
  const correct = async (of: Hourless, changes: object) => {
    const { version: seenVersion } = await read(of);
    await desk.ask(correctCatheter, { catheterId: of.catheterId, seenVersion, reason, ...changes });
    return read(of);
  };

  it("is named in the list of present patients, among those who left, and on the round", async () => {
    const wardId = desk.hospital.wards["3E"];
    const { patients, left } = await desk.ask(readWardPatients, { wardId });
    const present = patients.find(({ identifier }) => identifier === "NH1");
    expect(present).toMatchObject({ noHour: ["since"], catheters: [{ noHour: ["insertedAt"] }] });
    expect(left.find(({ identifier }) => identifier === "NH2")).toMatchObject({ noHour: ["since", "leftAt"] });
    const { rows } = await desk.ask(readRound, { wardId });
    const row = rows.find(({ identifier }) => identifier === "NH1");
    // Who inserted the catheter was the last to see it, at that same hour.
    expect(row?.noHour).toEqual(["insertedAt", "lastSeenAt"]);
    const { rows: later } = await desk.ask(readRound, { wardId, day: "2026-11-19" as never });
    const said = later.flatMap(({ states }) => states.map((state) => state.reason)).join(" ");
    expect(said).not.toContain("00:00");
  });

  it("of an insertion stays one when another field or its day is corrected, and ends with the hour", async () => {
    expect(await correct(one.inPlace, { sizeFr: 14 })).toMatchObject({ sizeFr: 14, noHour: ["insertedAt"] });
    const moved = await correct(one.inPlace, { insertedAt: "2026-11-17" });
    expect(moved).toMatchObject({ insertedAt: local("2026-11-17T00:00:00.001"), noHour: ["insertedAt"] });
    const known = await correct(one.inPlace, { insertedAt: "2026-11-17T00:00" });
    expect([known.insertedAt, known.noHour]).toEqual([local("2026-11-17T00:00"), undefined]);
    const again = await correct(one.inPlace, { insertedAt: "2026-11-18" });
    expect(again.noHour).toEqual(["insertedAt"]);
  });

  it("of a removal is between two times of its day", async () => {
    const ends = { removedAt: null, removedAfterAt: null, removedBeforeAt: null };
    const moved = await correct(one.removed, { ...ends, removedAt: "2026-11-17" });
    expect(moved).toMatchObject({
      ...{ removedAt: null, noHour: ["removedAt"] },
      removedAfterAt: local("2026-11-17T00:00:00.001"),
      removedBeforeAt: local("2026-11-17T23:59:59.999"),
    });
    const known = await correct(one.removed, { ...ends, removedAt: "2026-11-17T13:00" });
    expect([known.removedAt, known.noHour]).toEqual([local("2026-11-17T13:00"), undefined]);
    await correct(one.removed, { ...ends, removedAt: "2026-11-18" });
    // On the day of the insertion it is after the insertion.
    expect(await correct(one.removed, { ...ends, removedAt: "2026-11-15" })).toMatchObject({
      removedAfterAt: local("2026-11-15T09:00"),
    });
    await correct(one.removed, { ...ends, removedAt: "2026-11-18" });
  });

  it("of a stay, of time on a unit and of a specimen stays one with another day", async () => {
    const { patientId } = one.inPlace;
    const { stays, wardStays } = await desk.ask(readPatient, { patientId });
    const [stay, wardStay] = [stays[0], wardStays[0]];
    if (!stay || !wardStay) throw new Error("the patient has no stay");
    const of = { stayId: stay.stayId, seenVersion: stay.version, reason };
    await desk.ask(correctStay, { ...of, admittedAt: "2026-11-13" });
    const wardOf = { wardStayId: wardStay.wardStayId, seenVersion: wardStay.version, reason };
    await desk.ask(correctWardStay, { ...wardOf, startAt: "2026-11-13" });
    const { specimens } = await desk.ask(readCultures, { patientId });
    const specimen = specimens[0];
    if (!specimen) throw new Error("the patient has no specimen");
    const cultureOf = { specimenId: specimen.specimenId, seenVersion: specimen.version, reason };
    await desk.ask(correctSpecimen, { ...cultureOf, collectedAt: "2026-11-18" });
    const after = await desk.ask(readPatient, { patientId });
    expect(after.stays[0]).toMatchObject({ admittedAt: local("2026-11-13T00:00:00.001"), noHour: ["admittedAt"] });
    expect(after.wardStays[0]).toMatchObject({ startAt: local("2026-11-13T00:00:00.001"), noHour: ["startAt"] });
    const cultures = await desk.ask(readCultures, { patientId });
    expect(cultures.specimens[0]).toMatchObject({ noHour: ["collectedAt"] });
  });

  it("is refused as a day that does not exist, and where a person is at the bedside", async () => {
    const { version: seenVersion, catheterId } = await read(one.inPlace);
    const of = { catheterId, seenVersion, reason };
    const codes = async (insertedAt: string) =>
      (await desk.refused(correctCatheter, { ...of, insertedAt })).errors.map(({ code, pointer }) => code + pointer);
    expect(await codes("2026-11-31")).toEqual(["time-unreadable/insertedAt"]);
    expect(await codes("2026-11-21")).toEqual(["in-the-future/insertedAt"]);
    const review = { catheterId, at: "2026-11-19", outcome: "remove" as const };
    expect((await desk.refused(reviewCatheter, review)).errors[0]?.code).toBe("time-unreadable");
  });

  it("of a removal is later than a review of that day, for as long as the review holds", async () => {
    const { catheterId } = one.removed;
    const after = async () => (await read(one.removed)).removedAfterAt;
    const dayBegan = local("2026-11-18T00:00:00.001");
    expect(await after()).toBe(dayBegan);
    const review = { catheterId, outcome: "remove" as const };
    const { noteId } = await desk.ask(reviewCatheter, { ...review, at: "2026-11-18T10:00" });
    expect(await after()).toBe(local("2026-11-18T10:00"));
    expect((await read(one.removed)).noHour).toEqual(["removedAt"]);
    await desk.ask(correctNote, { noteId, seenVersion: 1, at: "2026-11-18T08:00", reason });
    expect(await after()).toBe(local("2026-11-18T08:00"));
    await desk.ask(voidNote, { noteId, seenVersion: 2, reason });
    expect(await after()).toBe(dayBegan);
    const late = await desk.refused(reviewCatheter, { ...review, at: "2026-11-19T00:10" });
    expect(late.errors.map(({ code }) => code)).toEqual(["not-in-place"]);
  });

  it("leaves a removal with an hour as it is, whatever is written", async () => {
    const ends = { removedAfterAt: null, removedBeforeAt: null };
    await correct(one.removed, { ...ends, removedAt: "2026-11-18T09:00" });
    const review = { catheterId: one.removed.catheterId, outcome: "remove" as const };
    const late = await desk.refused(reviewCatheter, { ...review, at: "2026-11-18T10:00" });
    expect(late.errors.map(({ code }) => code)).toEqual(["not-in-place"]);
  });
});
