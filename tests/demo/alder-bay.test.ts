import { beforeAll, describe, expect, it } from "vitest";
import { alderBayLines, type DemoOptions, hospitalLines, reviewLines } from "../../src/demo/alder-bay.ts";
import { drawHospital } from "../../src/demo/hospital.ts";
import { demoWards } from "../../src/demo/wards.ts";
import { zoneNamed } from "../../src/domain/days/zone.ts";
import type { IntakeFile, IntakeValues } from "../../src/domain/intake/intake-line.ts";
import type { ReadLine } from "../../src/usecases/imports/intake-item.ts";

const now = Date.UTC(2026, 10, 25, 12);
const standard: DemoOptions = { seed: 1, zone: zoneNamed("America/New_York"), now, days: 120 };

async function lines(options: Partial<DemoOptions> = {}): Promise<ReadLine[]> {
  const found: ReadLine[] = [];
  for await (const line of alderBayLines({ ...standard, ...options })) found.push(line);
  return found;
}

let all: readonly ReadLine[] = [];
beforeAll(async () => {
  all = await lines();
});

function valuesOf<F extends IntakeFile>(file: F): IntakeValues[F][] {
  return all.filter((line) => line.file === file).map((line) => line.values as IntakeValues[F]);
}

describe("the fictional hospital", () => {
  it("comes out the same for the same seed and instant, and otherwise not", async () => {
    expect(await lines()).toEqual(all);
    expect(await lines({ seed: 2 })).not.toEqual(all);
    expect(await lines({ now: now + 86_400_000 })).not.toEqual(all);
  });

  it("numbers the lines of each file as if they were written down below a header, each with its own fingerprint", () => {
    const byFile = new Map<string, number[]>();
    for (const line of all) byFile.set(line.file, [...(byFile.get(line.file) ?? []), line.line]);
    expect([...byFile.keys()]).toEqual([
      ...["wards.csv", "stays.csv", "moves.csv", "catheters.csv", "reviews.csv", "daily-counts.csv"],
    ]);
    for (const numbers of byFile.values()) expect(numbers).toEqual(numbers.map((_, i) => i + 2));
    expect(new Set(all.map((line) => line.fingerprint)).size).toBe(all.length);
  });

  it("has patients on every ward, and everybody on a ward that is described", () => {
    const moves = valuesOf("moves.csv");
    const described = valuesOf("wards.csv").map((ward) => ward.ward);
    expect(described).toEqual(demoWards.map((ward) => ward.code));
    expect([...new Set(moves.map((move) => move.ward))].sort()).toEqual([...described].sort());
  });

  it("has nobody in two places at once, and nobody in a time to come", () => {
    const byPatient = new Map<string, IntakeValues["moves.csv"][]>();
    for (const move of valuesOf("moves.csv"))
      byPatient.set(move.patient, [...(byPatient.get(move.patient) ?? []), move]);
    for (const moves of byPatient.values()) {
      const ordered = moves.toSorted((a, b) => a.from - b.from);
      for (const [i, move] of ordered.entries()) {
        expect(move.from).toBeLessThanOrEqual(Math.min(now, move.to ?? now));
        expect(move.to ?? now).toBeLessThanOrEqual(now);
        expect(move.to ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(
          ordered[i + 1]?.from ?? Number.POSITIVE_INFINITY,
        );
      }
    }
    expect(byPatient.size).toBeGreaterThan(1000);
  });

  it("reaches back as many days as asked, with the wards full from the first of them", () => {
    const moves = valuesOf("moves.csv");
    const present = (at: number) => moves.filter((move) => move.from <= at && at < (move.to ?? now + 1)).length;
    const first = present(now - 119 * 86_400_000);
    const last = present(now);
    expect(first / last).toBeGreaterThan(0.6);
    expect(first / last).toBeLessThan(1.6);
    const ends = moves.map((move) => move.to ?? now);
    const lastEnds = new Map<string, number>();
    for (const [i, move] of moves.entries())
      lastEnds.set(move.stay, Math.max(lastEnds.get(move.stay) ?? 0, ends[i] ?? 0));
    expect(Math.min(...lastEnds.values())).toBeGreaterThanOrEqual(now - 120 * 86_400_000);
  });

  it("says of every catheter its stay, and of every review its catheter, which was in place then", () => {
    const stays = new Set(valuesOf("moves.csv").map((move) => move.stay));
    const catheters = new Map(valuesOf("catheters.csv").map((catheter) => [catheter.catheter, catheter]));
    for (const { stay, removed } of catheters.values()) {
      expect(stays.has(stay)).toBe(true);
      expect(removed ?? now).toBeLessThanOrEqual(now);
    }
    const reviews = valuesOf("reviews.csv");
    for (const { catheter, day, written } of reviews) {
      const reviewed = catheters.get(catheter);
      expect(reviewed && (reviewed.inserted ?? 0) <= day && day <= (reviewed.removed ?? now)).toBe(true);
      expect(written).toBeGreaterThanOrEqual(day);
    }
    expect(reviews.length).toBeGreaterThan(catheters.size);
    const kinds = new Set([...catheters.values()].map((catheter) => catheter.kind));
    expect(kinds).toEqual(new Set(["indwelling-urethral", "suprapubic"]));
  });

  it("leaves out what somebody is to record: later catheters with their reviews, and later removals", () => {
    const recordedFrom = now - 14 * 86_400_000;
    const hospital = drawHospital(standard);
    const left = [...hospitalLines(hospital, { now, recordedFrom })];
    const catheters = left.flatMap((line) => (line.file === "catheters.csv" ? [line.values] : []));
    expect(
      catheters.every(({ inserted, removed }) => (inserted ?? 0) < recordedFrom && (removed ?? 0) < recordedFrom),
    ).toBe(true);
    const told = new Set(catheters.map(({ catheter }) => catheter));
    const reviewed = left.flatMap((line) => (line.file === "reviews.csv" ? [line.values.catheter] : []));
    expect(reviewed.filter((number) => !told.has(number))).toEqual([]);
    expect(catheters.length).toBeLessThan(valuesOf("catheters.csv").length);
    expect(catheters.length).toBeGreaterThan(valuesOf("catheters.csv").length / 2);
  });

  it("gives the reviews of some catheters alone, as a file of their own", () => {
    const catheters = drawHospital(standard)
      .courses.flatMap((course) => course.catheters)
      .slice(0, 20);
    const own = [...reviewLines(catheters)];
    expect(own.map(({ line }) => line)).toEqual(own.map((_, i) => i + 2));
    expect(own).toHaveLength(catheters.flatMap(({ reviews }) => reviews).length);
  });
});
