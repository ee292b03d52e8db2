import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import type { OutputOf } from "../../shared/endpoint.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type Desk, openDesk } from "./desk.ts";
import { fillRound } from "./full-round.ts";

const { listDestinations, listPeople, readRound, readWardPatients, readWardsNow, searchAudit } = endpoints;

onEachDatabase("the wards as they are now", (fresh) => {
  let desk: Desk;
  let beds: Awaited<ReturnType<typeof fillRound>>;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    beds = await fillRound(desk);
  });
  afterAll(() => desk?.close());

  it("count patients and what the rounds say, by hand from the beds that are described in full-round.ts", async () => {
    const { wards, day } = await desk.ask(readWardsNow, {});
    const figures = wards.map(({ code, patients, catheters, due, overdue, pastThreshold, doubtful }) => [
      ...[code, patients, catheters, due, overdue, pastThreshold, doubtful],
    ]);
    // 3E: beds 2 to 10 with bed 8 held, and ALDER-1001. Overdue: 2, 4, 9, 10. Past two perioperative days: 4, 7, 10.
    // Not seen for 48 hours: 10. On 4N the review of the patient of bed 11 is due by noon, past two perioperative days.
    expect(figures).toEqual([
      ["3E", 10, 9, 0, 4, 3, 1],
      ["4N", 1, 1, 1, 0, 1, 0],
      ["OBS", 0, 0, 0, 0, 0, 0],
    ]);
    expect(day).toBe("2026-11-20");
    expect(wards.map(({ setting }) => setting)).toEqual(["inpatient", "inpatient", null]);
  });

  it("agree with each ward's round", async () => {
    const { wards } = await desk.ask(readWardsNow, {});
    for (const ward of wards) {
      const { rows } = await desk.ask(readRound, { wardId: ward.wardId });
      const having = (...states: string[]) =>
        rows.filter((row) => row.states.some(({ state }) => states.includes(state))).length;
      expect([ward.catheters, ward.due, ward.overdue, ward.pastThreshold, ward.doubtful]).toEqual([
        ...[rows.length, having("due"), having("overdue", "missed"), having("past-threshold"), having("doubtful")],
      ]);
    }
  });

  it("are told to a manager without patients, and to bedside people of their own wards alone", async () => {
    for (const person of ["manager", "bedside"] as const) {
      const { wards } = await desk.ask(readWardsNow, {}, { person });
      expect(wards.map(({ code }) => code)).toEqual(["3E"]);
    }
    await desk.refused(readWardsNow, {}, { person: "administrator" });
  });

  it("list who is on a ward by bed, where they came from and their catheters", async () => {
    const wardId = desk.hospital.wards["3E"];
    const { patients } = await desk.ask(readWardPatients, { wardId }, { person: "bedside" });
    const shown = patients.map(({ bed, arrivedToday, bedHeld, catheters }) => [
      ...[bed, arrivedToday, bedHeld, catheters.length],
    ]);
    expect(shown).toEqual([
      ["2", false, false, 1],
      ["3", false, false, 1],
      ["4", false, false, 1],
      ["5", true, false, 1],
      ["6", false, false, 1],
      ["7", false, false, 1],
      ["8", true, true, 1],
      ["9", false, false, 1],
      ["10", false, false, 1],
      [null, false, false, 0],
    ]);
    expect(patients[3]?.catheters[0]).toMatchObject({ insertedAt: null, inPlaceOnArrival: true });
    expect(patients[0]).toMatchObject({ cameFrom: null, since: Date.UTC(2026, 10, 19, 12), stayId: beds[2].stayId });
    const on4N = await desk.ask(readWardPatients, { wardId: desk.hospital.wards["4N"] });
    const [moved] = on4N.patients;
    expect(moved).toMatchObject({ cameFrom: wardId, arrivedToday: true, since: Date.UTC(2026, 10, 20, 13), bed: "1" });
  });

  it("list who left lately and why, and nobody who is back", async () => {
    const { left } = await desk.ask(readWardPatients, { wardId: desk.hospital.wards["3E"] });
    expect(left.map(({ bed, kind, absence, toWardId }) => [bed, kind, absence, toWardId])).toEqual([
      ["11", "moved", null, desk.hospital.wards["4N"]],
      ["12", "absent", "leave", null],
    ]);
    expect(left.every(({ leftAt }) => leftAt === Date.UTC(2026, 10, 20, 13))).toBe(true);
  });

  it("record that a ward's patients were seen, with each of them", async () => {
    const wardId = desk.hospital.wards["4N"];
    await desk.ask(readWardPatients, { wardId });
    const { entries } = await desk.ask(searchAudit, { action: "view-ward-patients", limit: 1 });
    expect(entries[0]).toMatchObject({ patientIds: [beds[11].patientId], details: { wardId } });
  });

  it("hide a ward from people of others", async () => {
    const hidden = await desk.refused(readWardPatients, { wardId: desk.hospital.wards["4N"] }, { person: "bedside" });
    expect(hidden.code).toBe("not-found");
  });

  it("let bedside people move patients to any open ward of the facility", async () => {
    const { wards } = await desk.ask(listDestinations, {}, { person: "bedside" });
    expect(wards.map(({ code }) => code)).toEqual(["3E", "4N", "OBS"]);
    await desk.refused(listDestinations, {}, { person: "manager" });
  });

  it("come with the people of the facility and nobody of another one", async () => {
    const { people }: OutputOf<typeof listPeople> = await desk.ask(listPeople, {}, { person: "bedside" });
    const named = people.map(({ name, roles, wardIds }) => [name, roles.join(), wardIds.length]);
    expect(named).toEqual(
      expect.arrayContaining([
        ["Ash Moreno", "prevention", 0],
        ["Kit Sandoval", "bedside", 1],
        ["Jude Okafor", "manager", 1],
        ["Noa Lindqvist", "administrator", 1],
      ]),
    );
    expect(people.some(({ personId }) => personId === desk.hospital.people.elsewhere)).toBe(false);
    expect(people.every(({ active }) => active)).toBe(true);
  });

  it("name who has left: what they wrote keeps its author", async () => {
    const { manager } = desk.hospital.people;
    const leave = (active: boolean) =>
      desk.hospital.store.tx((tx) => tx.db.person.update({ where: { id: manager }, data: { active } }));
    await leave(false);
    const { people } = await desk.ask(listPeople, {}, { person: "bedside" });
    expect(people.find(({ personId }) => personId === manager)).toMatchObject({ name: "Jude Okafor", active: false });
    await leave(true);
  });
});
