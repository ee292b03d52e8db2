import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { day } from "../../shared/day.ts";
import type { InputOf } from "../../shared/endpoint.ts";
import type { PolicyBody } from "../../shared/policy.ts";
import { defaultPolicy } from "../../src/domain/policy/default-policy.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { auditOf } from "../databases/read-back.ts";
import { lookedAt } from "./alder-bay.ts";
import { type Desk, openDesk } from "./desk.ts";

const { listPolicies, readPolicy, setPolicy } = endpoints;
const reason = "Agreed with the units";

onEachDatabase("policies", (fresh) => {
  let desk: Desk;
  let east: number;
  let north: number;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    ({ "3E": east, "4N": north } = desk.hospital.wards);
  });
  afterAll(() => desk?.close());

  type Said = Partial<Omit<InputOf<typeof setPolicy>, "fromDay" | "body">>;
  /** A policy that is told from others by its days of review. */
  const version = (fromDay: string, reviewFromDay: number | null, said: Said = {}) => ({
    ...{ wardId: null, replaces: 0, reason, fromDay: day.parse(fromDay) },
    body: reviewFromDay === null ? null : { ...defaultPolicy, reviewFromDay },
    ...said,
  });
  const inForce = async (wardId: number, text?: string) => {
    const input = { wardId, ...(text === undefined ? {} : { day: day.parse(text) }) };
    const policy = await desk.ask(readPolicy, input);
    return [policy.number, policy.wardId, policy.fromDay, policy.body.reviewFromDay];
  };
  const refused = async (input: InputOf<typeof setPolicy>) => {
    const { status, code, errors } = await desk.refused(setPolicy, input);
    return [status, code, ...errors.map(({ pointer }) => pointer)];
  };

  it("are the built-in one as long as nobody set another", async () => {
    const policy = await desk.ask(readPolicy, { wardId: east }, { person: "bedside" });
    expect(policy).toMatchObject({ number: 0, wardId: null, fromDay: null, body: defaultPolicy });
    expect(policy.sentences[0]?.sentence).toBe(
      "Built-in policy: a catheter is reviewed every day from eligibility day 2 on, by 12:00.",
    );
    const { policies, builtIn } = await desk.ask(listPolicies, {});
    expect(policies).toEqual([]);
    expect(builtIn.body).toEqual(defaultPolicy);
    expect(Object.keys(builtIn.sources)).toEqual(policy.sentences.map(({ rule }) => rule));
  });

  it("are the ward's own, else the facility's, by the day, and go back to the level above", async () => {
    // First versions may begin in the past: before them nothing was agreed.
    expect(await desk.ask(setPolicy, version("2026-11-10", 3))).toMatchObject({ number: 1 });
    expect(await desk.ask(setPolicy, version("2026-11-15", 4, { wardId: east }))).toMatchObject({ number: 1 });
    expect(await desk.ask(setPolicy, version("2026-11-25", 5, { replaces: 1 }))).toMatchObject({ number: 2 });
    await desk.ask(setPolicy, version("2026-11-28", null, { wardId: east, replaces: 1 }));
    await desk.ask(setPolicy, version("2026-11-30", null, { replaces: 2 }), { person: "administrator" });
    expect(await inForce(east, "2026-11-09")).toEqual([0, null, null, 2]);
    expect(await inForce(east, "2026-11-14")).toEqual([1, null, "2026-11-10", 3]);
    expect(await inForce(east, "2026-11-15")).toEqual([1, east, "2026-11-15", 4]);
    expect(await inForce(east)).toEqual([1, east, "2026-11-15", 4]);
    expect(await inForce(north)).toEqual([1, null, "2026-11-10", 3]);
    expect(await inForce(north, "2026-11-25")).toEqual([2, null, "2026-11-25", 5]);
    expect(await inForce(east, "2026-11-27")).toEqual([1, east, "2026-11-15", 4]);
    expect(await inForce(east, "2026-11-28")).toEqual([2, null, "2026-11-25", 5]);
    expect(await inForce(east, "2026-11-30")).toEqual([0, null, null, 2]);
  });

  it("name the version, whose it is and its first day in every sentence", async () => {
    const texts = async (wardId: number) =>
      (await desk.ask(readPolicy, { wardId })).sentences.map(({ sentence }) => sentence.split(": ")[0]);
    expect(new Set(await texts(east))).toEqual(new Set(["Policy of unit 3E, version 1, from 2026-11-15"]));
    expect(new Set(await texts(north))).toEqual(new Set(["Policy of the facility, version 1, from 2026-11-10"]));
  });

  it("are listed with who set them and why; others see those of their own wards", async () => {
    const { policies } = await desk.ask(listPolicies, {});
    expect(policies.map(({ wardId, number, fromDay, body }) => [wardId, number, fromDay, body?.reviewFromDay])).toEqual(
      [
        [null, 1, "2026-11-10", 3],
        [null, 2, "2026-11-25", 5],
        [null, 3, "2026-11-30", undefined],
        [east, 1, "2026-11-15", 4],
        [east, 2, "2026-11-28", undefined],
      ],
    );
    const { prevention, administrator } = desk.hospital.people;
    expect(policies[0]).toMatchObject({ reason, recordedBy: prevention, recordedAt: lookedAt });
    expect(policies[2]).toMatchObject({ recordedBy: administrator, body: null });
    await desk.ask(setPolicy, version("2026-12-01", 6, { wardId: north }));
    const own = (await desk.ask(listPolicies, {}, { person: "bedside" })).policies;
    expect(new Set(own.map(({ wardId }) => wardId))).toEqual(new Set([null, east]));
    expect((await desk.ask(listPolicies, {}, { person: "elsewhere" })).policies).toEqual([]);
    const { facilityId } = await desk.ask(endpoints.readFacility, {});
    const audit = await auditOf(desk.hospital.store, facilityId, lookedAt);
    expect(audit.filter(({ action }) => action === "set-policy")).toHaveLength(6);
  });

  it("do not change what was in force on past days, once there is one", async () => {
    expect(await refused(version("2026-11-19", 7, { replaces: 3 }))).toEqual([409, "policy-in-the-past", "/fromDay"]);
    expect(await refused(version("2026-11-19", null, { wardId: east, replaces: 2 }))).toEqual([
      ...[409, "policy-in-the-past", "/fromDay"],
    ]);
    await desk.ask(setPolicy, version("2026-11-20", 7, { wardId: east, replaces: 2 }));
    expect(await inForce(east)).toEqual([3, east, "2026-11-20", 7]);
    expect(await inForce(east, "2026-11-19")).toEqual([1, east, "2026-11-15", 4]);
  });

  it("are not set by who saw an older number, and show the latest", async () => {
    const stale = await desk.refused(setPolicy, version("2026-12-01", 8, { replaces: 2 }));
    expect([stale.status, stale.code, stale.errors[0]?.pointer]).toEqual([412, "stale-version", "/replaces"]);
    expect(stale.current).toMatchObject({ number: 3, wardId: null, fromDay: "2026-11-30", body: null });
    const none = await desk.refused(
      setPolicy,
      version("2026-12-01", 8, { wardId: desk.hospital.wards.OBS, replaces: 1 }),
    );
    expect([none.status, none.current]).toEqual([412, {}]);
  });

  it("do not contradict themselves, and are for wards that are there", async () => {
    const [first] = defaultPolicy.indications;
    if (!first) throw new Error("the built-in policy accepts nothing");
    const body: PolicyBody = {
      ...defaultPolicy,
      indications: [first, { ...first, label: "The same again" }],
      thresholdByIndication: { perioperative: 2 },
      requiredFields: ["sizeFr", "sizeFr"],
    };
    expect(await refused({ ...version("2026-12-01", 2, { replaces: 3 }), body })).toEqual([
      ...[422, "policy-contradicts", "/body/indications/1", "/body/requiredFields/1"],
      "/body/thresholdByIndication/perioperative",
    ]);
    const elsewhere = version("2026-12-01", 2, { wardId: desk.hospital.elsewhereWardId });
    expect(await refused(elsewhere)).toEqual([404, "not-found", "/wardId"]);
    for (const person of ["bedside", "manager"] as const)
      expect((await desk.refused(setPolicy, version("2026-12-01", 2), { person })).status).toBe(403);
  });
});
