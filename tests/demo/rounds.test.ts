import { describe, expect, it } from "vitest";
import { hospitalLines } from "../../src/demo/alder-bay.ts";
import { drawFrom } from "../../src/demo/draw.ts";
import type { DemoHospital } from "../../src/demo/hospital.ts";
import { careRounds } from "../../src/demo/recent-care.ts";
import { demoWards } from "../../src/demo/wards.ts";
import type { Instant } from "../../src/domain/days/day-number.ts";
import type { PatientLine } from "../../src/domain/intake/intake-line.ts";
import { planPatient } from "../../src/domain/intake/plan-patient.ts";
import type { NecessityPatient } from "../../src/domain/necessity/facts.ts";
import { roundOf } from "../../src/domain/necessity/round.ts";
import { policyInForce } from "../../src/domain/policy/policy-in-force.ts";
import { newNote } from "../../src/domain/timeline/write-note.ts";
import { hospitalAt, zone } from "./drawn.ts";

const wardIds = new Map(demoWards.map(({ code }, i) => [code, i + 1]));
let nextId = 1000;

/** The policies of the demo as the record keeps them. */
const versionsOf = ({ policies }: DemoHospital) =>
  policies.map(({ ward, fromDay, body, reason }, i) => ({
    ...{ id: i, wardId: wardIds.get(ward) ?? 0, number: 1, fromDay, body, reason, recordedAt: 0, recordedBy: 1 },
  }));

/** The patients who are on the wards now, as the record holds them. */
function patientsNow(hospital: DemoHospital, now: Instant): NecessityPatient[] {
  const courses = hospital.courses.filter(({ legs }) => (legs.at(-1)?.to ?? 0) > now);
  const present = { ...hospital, counts: [], courses };
  const versions = versionsOf(hospital);
  const policyOn = (ward: number | null, day: number) => policyInForce(versions, ward, day);
  const care = { zone, now, personId: 1, policyOn, wards: new Map() };
  const lines = linesByStay(present, now);
  const rounds = careRounds(drawFrom(2), courses, { zone, now, firstDay: zone.dayOf(now) - 13 });
  return courses.map(({ stay }) => {
    const start = { timeline: { patientId: nextId, stays: [] }, patientId: nextId++ };
    const planned = planPatient(start, lines.get(stay) ?? [], { wardIds, newId: () => nextId++, care });
    const refused = [...planned.outcomes.values()].filter(({ state }) => state === "refused");
    expect(refused).toEqual([]);
    const catheters = planned.timeline.stays.flatMap((one) => one.catheters);
    const seen = rounds.flatMap(({ kind, writtenAt, found }) =>
      found.flatMap(({ catheter, at }) => {
        const catheterId = catheters.find(({ number }) => number === catheter)?.id;
        return catheterId ? [newNote({ noteId: nextId++, catheterId, writtenAt, writtenBy: 1 }, { kind, at })] : [];
      }),
    );
    return { ...planned.timeline, notes: [...planned.notes.map((note) => note.now), ...seen] };
  });
}

/** The lines about each stay; reviews with the stay of their catheter. */
function linesByStay(hospital: DemoHospital, now: Instant): Map<string, PatientLine[]> {
  const stayOf = new Map(
    hospital.courses.flatMap(({ stay, catheters }) => catheters.map(({ number }) => [number, stay])),
  );
  const lines = new Map<string, PatientLine[]>();
  for (const line of hospitalLines(hospital, { now, recordedFrom: Number.POSITIVE_INFINITY })) {
    if (line.file === "wards.csv" || line.file === "daily-counts.csv") continue;
    const stay = line.values.stay ?? stayOf.get(line.file === "reviews.csv" ? (line.values.catheter ?? "") : "") ?? "";
    const placed = line.file === "reviews.csv" ? { ...line, values: { ...line.values, stay } } : line;
    lines.set(stay, [...(lines.get(stay) ?? []), placed]);
  }
  return lines;
}

/** Every round of the hospital at an instant, as its rows. */
function roundsAt(now: Instant, seed = 1) {
  const hospital = hospitalAt(now, { days: 40, seed });
  const patients = patientsNow(hospital, now);
  const versions = versionsOf(hospital);
  const rules = {
    ...{ zone, dayExists: () => true, wardName: String },
    isInpatient: (wardId: number) => demoWards[wardId - 1]?.setting === "inpatient",
    policyOn: (wardId: number, day: number) => policyInForce(versions, wardId, day),
  };
  return demoWards.flatMap(({ code }) => {
    const wardId = wardIds.get(code) ?? 0;
    return roundOf({ wardId, day: zone.dayOf(now), at: now, patients, rules }).map((row) => ({ ...row, ward: code }));
  });
}

/** An instant of 25 November 2026, local time. */
const at = (hour: number, minute = 0) => Date.UTC(2026, 10, 25, 5 + hour, minute);

describe("the rounds of the demo, whenever it is loaded", () => {
  const hours = [at(0, 5), at(2), at(5, 30), at(7), at(10, 15), at(12), at(15), at(20), at(22, 30), at(23, 50)];

  it.each(hours.map((now) => [(zone.localAt(now) % 86_400_000) / 3_600_000, now]))(
    "at %d o'clock have something due, overdue, past the threshold, doubtful, decided and asked",
    (_, now) => {
      const rows = roundsAt(now as Instant);
      const states = rows.flatMap((row) => row.states.map(({ state }) => state));
      const missing = ["due", "overdue", "past-threshold", "doubtful", "removal-decided", "asked"].filter(
        (state) => !states.includes(state as never),
      );
      expect(missing).toEqual([]);
      const count = (state: string) => states.filter((one) => one === state).length;
      // A few, not most: somebody looks after these patients.
      expect(rows.length).toBeGreaterThan(15);
      expect(count("doubtful")).toBeLessThan(rows.length / 4);
      expect(count("overdue")).toBeLessThan(rows.length / 2);
      expect(count("removal-decided")).toBeLessThan(rows.length / 4);
    },
  );

  it("have something past the threshold on 4N, and reasons that the policy does not accept", () => {
    const rows = roundsAt(at(12)).filter(({ ward }) => ward === "4N");
    const states = new Set(rows.flatMap((row) => row.states.map(({ state }) => state)));
    expect([...states]).toEqual(expect.arrayContaining(["past-threshold", "indication-outside"]));
  });

  it("list kinds without reviews, and catheters found in place on arrival", () => {
    const rows = roundsAt(at(12));
    expect(rows.some(({ kind, ward }) => kind === "suprapubic" && ward === "4S")).toBe(true);
    expect(rows.some(({ inPlaceOnArrival, ward }) => inPlaceOnArrival && ward === "3E")).toBe(true);
  });
});
