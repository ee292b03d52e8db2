import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { sheet } from "../../shared/sheet.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { counted, identifiers } from "./alder-bay.ts";
import { type Door, openDoor } from "./door.ts";

onEachDatabase("the endpoints", (fresh) => {
  let door: Door;
  let ward: Door["hospital"]["wards"];

  beforeAll(async () => {
    door = await openDoor(await fresh());
    ward = door.hospital.wards;
  });

  afterAll(() => door?.close());

  it("tell who the acting person is", async () => {
    const { body } = await door.get("/api/v1/me", "bedside").expect(200);
    expect(body).toEqual({
      personId: door.hospital.people.bedside,
      name: "Kit Sandoval",
      roles: ["bedside"],
      wardIds: [ward["3E"]],
      permissions: [
        ...["see-own-account", "see-facility", "see-wards", "see-counts", "see-patients"],
        ...["record-care", "count-by-hand", "see-policy", "see-baselines", "see-changes"],
      ],
    });
  });

  it("tell the facility, its census and the day that it is there", async () => {
    const { body } = await door.get("/api/v1/facility").expect(200);
    expect(body).toMatchObject({
      name: "Alder Bay Hospital",
      demo: false,
      zone: "America/New_York",
      census: [{ fromDay: "1970-01-01", time: "00:00" }],
      now: "2026-11-20T15:00:00.000Z",
      today: "2026-11-20",
    });
  });

  it("list the wards of the facility, and to others only their own", async () => {
    const codes = async (person: "prevention" | "bedside" | "elsewhere") => {
      const { body } = await door.get("/api/v1/wards", person).expect(200);
      return endpoints.listWards.output.parse(body).wards.map(({ code, setting }) => [code, setting]);
    };
    expect(await codes("prevention")).toEqual([
      ["3E", "inpatient"],
      ["4N", "inpatient"],
      ["OBS", null],
    ]);
    expect(await codes("bedside")).toEqual([["3E", "inpatient"]]);
    expect(await codes("elsewhere")).toEqual([["9Z", "inpatient"]]);
  });

  it("count a month by ward, with the ward of each row and null where nobody said what a ward is", async () => {
    const { body } = await door.get("/api/v1/months/2026-11").expect(200);
    const answer = endpoints.readMonth.output.parse(body);
    const { "3E": east, "4N": north, total } = counted;
    expect(answer.wardIds).toEqual([ward["3E"], ward["4N"], ward.OBS]);
    expect(answer.sheet.rows.map((row) => row.slice(0, 5))).toEqual([
      ["3E", "Ward 3E", east.patientDays, east.catheterDays, east.utilization],
      ["4N", "Ward 4N", north.patientDays, north.catheterDays, north.utilization],
      ["OBS", "Ward OBS", null, null, null],
    ]);
    expect(answer.sheet.total?.slice(2, 5)).toEqual([total.patientDays, total.catheterDays, total.utilization]);
  });

  it("count for a manager the own wards, and say so", async () => {
    const { body } = await door.get("/api/v1/months/2026-11", "manager").expect(200);
    const answer = endpoints.readMonth.output.parse(body);
    expect(answer.wardIds).toEqual([ward["3E"]]);
    expect(answer.sheet.total?.[0]).toBe("Your units");
    expect(answer.sheet.cautions[0]).toMatch(/^Only your units are shown/);
  });

  it("list the ward days of a month, which sum to the month", async () => {
    for (const code of ["3E", "4N"] as const) {
      const { body } = await door.get(`/api/v1/wards/${ward[code]}/months/2026-11`).expect(200);
      const { rows } = sheet.parse(body.sheet);
      const sum = (at: number) => rows.reduce((all, row) => all + Number(row[at]), 0);
      expect(rows).toHaveLength(counted[code].days);
      expect([sum(2), sum(3)]).toEqual([counted[code].patientDays, counted[code].catheterDays]);
    }
  });

  it("list the patients behind a ward day, and record that they were seen", async () => {
    const path = `/api/v1/wards/${ward["3E"]}/days/2026-11-04`;
    const { body } = await door.get(path, "bedside").expect(200);
    const { patients } = endpoints.readWardDay.output.parse(body);
    expect(patients.map(({ identifier, catheter }) => [identifier, catheter])).toEqual([
      [identifiers[0], true],
      [identifiers[1], false],
    ]);
    const views = await door.hospital.store.read((read) =>
      read.db.auditEntry.findMany({ where: { action: "view-ward-day" }, include: { patients: true } }),
    );
    expect(views).toHaveLength(1);
    expect(views[0]?.personId).toBe(door.hospital.people.bedside);
    expect(new Set(views[0]?.patients.map((one) => one.patientId))).toEqual(
      new Set(patients.map((one) => one.patientId)),
    );
  });

  it("answer a day without patients with an empty list, and one without a census yet with a refusal", async () => {
    const day = `/api/v1/wards/${ward["3E"]}/days`;
    expect((await door.get(`${day}/2026-11-01`).expect(200)).body.patients).toEqual([]);
    // The census of today was at 00:00, ten hours ago.
    expect((await door.get(`${day}/2026-11-20`).expect(200)).body.patients).toHaveLength(1);
    expect((await door.get(`${day}/2026-11-21`).expect(422)).body.code).toBe("in-the-future");
    expect((await door.get("/api/v1/months/2026-12").expect(422)).body.code).toBe("in-the-future");
    expect((await door.get(`/api/v1/wards/${ward["3E"]}/months/2026-12`).expect(422)).body.code).toBe("in-the-future");
  });
});
