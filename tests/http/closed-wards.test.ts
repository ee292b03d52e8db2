import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { day } from "../../shared/day.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type Desk, openDesk } from "./desk.ts";

const { admitPatient, closeWard, findPatients, listDestinations, movePatient, readPatient, readWardsNow } = endpoints;

onEachDatabase("a closed ward", (fresh) => {
  let desk: Desk;
  let wardId: number;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    wardId = desk.hospital.wards["4N"];
  });
  afterAll(() => desk?.close());
  const close = (text: string) => desk.ask(closeWard, { wardId, closedDay: day.parse(text), reason: "Renovation" });
  const shown = async () => [
    (await desk.ask(readWardsNow, {})).wards.some((ward) => ward.wardId === wardId),
    (await desk.ask(listDestinations, {})).wards.some((ward) => ward.wardId === wardId),
  ];
  const admission = (number: string, admittedAt: string) => ({ wardId, identifier: number, number, admittedAt });

  it("is open on its last day, and gone from the wards now and the destinations on the day after", async () => {
    await close("2026-11-20");
    expect(await shown()).toEqual([true, true]);
    await close("2026-11-19");
    expect(await shown()).toEqual([false, false]);
  });

  it("refuses patients after its last day, with the day and the remedy, and takes what is written down late", async () => {
    const refused = await desk.refused(admitPatient, admission("LATE", "2026-11-20T00:00"), { person: "prevention" });
    expect([refused.status, refused.code, refused.errors[0]?.pointer]).toEqual([409, "ward-closed", "/wardId"]);
    expect(refused.detail).toBe("The last day of unit 4N was 2026-11-19.");
    expect(refused.errors[0]?.remedy).toMatch(/^Choose a unit that was open/);
    const { patients } = await desk.ask(findPatients, { identifier: "ALDER-1001" });
    const { stays } = await desk.ask(readPatient, { patientId: patients[0]?.patientId ?? 0 });
    const move = { stayId: stays[0]?.stayId ?? 0, toWardId: wardId, movedAt: "2026-11-20T09:00" };
    const moved = await desk.refused(movePatient, move);
    expect([moved.status, moved.code, moved.errors[0]?.pointer]).toEqual([409, "ward-closed", "/toWardId"]);
    await desk.ask(admitPatient, admission("IN-TIME", "2026-11-19T23:59"));
  });
});
