import { describe, expect, it } from "vitest";
import { loadDemoOrSetUp } from "../../src/commands/first-run.ts";
import { serve } from "../../src/commands/serve.ts";
import { demoWards } from "../../src/demo/wards.ts";
import { people } from "../../src/store/people.ts";
import { wards } from "../../src/store/wards.ts";
import { verifyLedger } from "../../src/usecases/jobs/check-ledger.ts";
import { loadMonth } from "../../src/usecases/months/load-month.ts";
import { firstActor, isDemo } from "../../src/usecases/settings/find-facility.ts";
import { readFacility } from "../../src/usecases/settings/read-facility.ts";
import { freshSqlite } from "../databases/databases.ts";
import { refusalOf } from "../databases/refusal.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { commandContext, runCommand } from "./run-command.ts";

const now = Date.UTC(2026, 10, 25, 12);

describe("the first start without the demo", () => {
  const shared = sharedStore(freshSqlite);

  it("sets up the facility of the settings, once", async () => {
    const run = commandContext([], { now, settings: { DWELL_FACILITY_NAME: "Alder Bay", DWELL_CENSUS_TIME: "24:00" } });
    await loadDemoOrSetUp(shared.store, run.context, true);
    const actor = await firstActor(shared.store);
    if (!actor) throw new Error("nobody is there");
    expect(actor.roles.toSorted()).toEqual(["administrator", "prevention"]);
    expect(await readFacility({ store: shared.store, actor, now })).toMatchObject({
      name: "Alder Bay",
      zone: "America/New_York",
      census: [{ time: "24:00" }],
    });
    expect(await isDemo(shared.store)).toBe(false);
    // Neither another setting nor the wish for the demo changes what is there.
    await loadDemoOrSetUp(shared.store, commandContext([], { now }).context, false);
    expect(await firstActor(shared.store)).toEqual(actor);
    expect(await isDemo(shared.store)).toBe(false);
    await loadDemoOrSetUp(shared.store, commandContext([], { now }).context, true);
    expect(await firstActor(shared.store)).toEqual(actor);
    expect(run.err()).toBe(
      'Setting up "Alder Bay": time zone America/New_York, daily census at 24:00. ' +
        "The zone cannot change after the first admission.\n",
    );
  });
});

describe("the first start with the demo", () => {
  let said = "";
  const shared = sharedStore(async () => {
    const database = await freshSqlite();
    const settings = { DWELL_PORT: "0", DWELL_LOG_LEVEL: "silent" };
    said = (await runCommand(serve, [], { databaseUrl: database.url, now, settings })).err;
    return database;
  });

  it("loads a year of the fictional hospital without a refused line, and the ledger is right", async () => {
    const { store } = shared;
    expect(said).toBe(
      "Loading the demo: Alder Bay Hospital. The hospital and its people are fictional.\n" +
        "Reading lines\nChecking lines\nStoring lines\n",
    );
    expect(await isDemo(store)).toBe(true);
    const states = await store.read((read) => read.db.importLine.groupBy({ by: ["state"], _count: true }));
    expect(states.map((row) => row.state).sort()).toEqual(["accepted", "marked"]);
    const actor = await firstActor(store);
    if (!actor) throw new Error("nobody is there");
    const act = { store, actor, now };
    const { patients, differences } = await verifyLedger(act);
    expect(differences).toEqual([]);
    expect(patients).toBeGreaterThan(3000);

    const whole = await loadMonth(act, { days: null });
    const inpatient = demoWards.filter((ward) => ward.setting === "inpatient").map((ward) => ward.code);
    expect(whole.wards.map((ward) => ward.code)).toEqual(inpatient.sort());
    const ratio = new Map(whole.wards.map((ward) => [ward.code, ward.catheterDays / ward.patientDays]));
    for (const ward of whole.wards) expect(ward.patientDays).toBeGreaterThan(1000);
    // 4N keeps its catheters too long: of all wards only intensive care has more.
    expect(
      [...ratio]
        .sort(([, a], [, b]) => b - a)
        .map(([code]) => code)
        .slice(0, 2),
    ).toEqual(["ICU", "4N"]);
    // What is doubtful in a real record is there as well, for the reports to tell.
    expect(new Set(whole.findings.map((finding) => finding.kind))).toEqual(
      new Set(["absence-known", "absence-unknown", "in-place-on-arrival", "not-confirmed"]),
    );
  });

  it("is refused to whoever wants an empty record, and left as it is", async () => {
    const run = commandContext([], { now });
    const refused = await refusalOf(shared.store, () => loadDemoOrSetUp(shared.store, run.context, true));
    expect(refused).toEqual({ code: "demo-record", pointer: "" });
    expect(run.err()).toBe("");
  });

  it("adds people who see some wards only", async () => {
    const { store } = shared;
    const actor = await firstActor(store);
    if (!actor) throw new Error("nobody is there");
    const codes = new Map((await store.read((read) => wards(read, actor.facilityId))).map((w) => [w.id, w.code]));
    const all = await store.read((read) => people(read, actor.facilityId));
    expect(
      all.map(({ name, roles, wardIds }) => [name, roles.toSorted(), wardIds.map((id) => codes.get(id)).sort()]),
    ).toEqual([
      ["Robin Vale", ["administrator", "prevention"], []],
      ["Sam Ortega", ["bedside"], ["3E", "ICU"]],
      ["Kit Lindqvist", ["manager"], ["3E", "3W", "4N"]],
    ]);
  });
});
