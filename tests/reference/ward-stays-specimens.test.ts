import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { day } from "../../shared/day.ts";
import { determineInForce } from "../../src/domain/cultures/determine-in-force.ts";
import { setAsideIn } from "../../src/domain/cultures/specimen.ts";
import { surveillanceOf } from "../../src/domain/cultures/surveillance-of.ts";
import { dayNumber } from "../../src/domain/days/day-number.ts";
import { patientsByIdentifier } from "../../src/store/patients.ts";
import { specimensOf } from "../../src/store/specimens.ts";
import type { Read } from "../../src/store/store.ts";
import { loadTimelines } from "../../src/store/timelines.ts";
import { loadWayRules } from "../../src/usecases/cultures/way-rules.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { importFiles, resultText } from "../usecases/imports/files.ts";
import { readRows } from "./read-data.ts";

// Real specimens with the stays and catheters they belong to: MIMIC-III Clinical Database Demo v1.4 (ODbL 1.0), dates
// shifted and wards renamed. The data have no signs, no birth dates and no colony counts.
const names = ["moves.csv", "catheters.csv", "specimens.csv"];
const files = Object.fromEntries(
  names.map((name) => [
    name,
    readFileSync(new URL(`data/ward-stays/${name}`, import.meta.url), "utf8")
      .trim()
      .split(/\r?\n/),
  ]),
);
const patientOf = new Map(readRows("ward-stays/moves.csv").map(({ stay = "", patient = "" }) => [stay, patient]));

onEachDatabase("real specimens imported with their stays", (fresh) => {
  const shared = sharedStore(fresh);

  /** What came of the specimens of a patient, by kind and time. */
  async function answersOf(read: Read, facilityId: number): Promise<Map<string, string>> {
    const rules = await loadWayRules(read, facilityId);
    const patients = [...(await patientsByIdentifier(read, facilityId, [...new Set(patientOf.values())]))];
    const timelines = await loadTimelines(
      read,
      patients.map(([, { id }]) => id),
    );
    const answers = new Map<string, string>();
    for (const [identifier, { id }] of patients) {
      const [timeline, specimens] = [timelines.get(id) ?? { patientId: id, stays: [] }, await specimensOf(read, [id])];
      const record = { birthDay: null, timeline, specimens, signs: [], findings: [] };
      const found = determineInForce(surveillanceOf(record, rules, dayNumber(day.parse("2025-12-01"))), "us");
      const outcomes = new Map(found.map(({ subject, outcome }) => [subject.id, outcome]));
      for (const one of specimens) {
        const key = [identifier, one.kind, new Date(one.collectedAt).toISOString().slice(0, 19)].join();
        const own = one.kind === "blood" ? "evidence" : (outcomes.get(one.id) ?? "lost");
        answers.set(key, setAsideIn(one).length > 0 ? "set-aside" : own);
      }
    }
    return answers;
  }

  it("without that setting of the source, a line without an organism is rejected and says how to repair it", async () => {
    const bay = await alderBay(shared.store);
    const result = await importFiles(bay.at("2025-12-01 12:00"), files, { setAside: true, assumeInpatient: true });
    const refused = await shared.store.read((read) =>
      read.db.importLine.findMany({ where: { importId: result.importId, file: "specimens.csv", state: "refused" } }),
    );
    expect(refused).toHaveLength(146);
    const faults = refused.flatMap(
      ({ faults: said }) => JSON.parse(said ?? "[]") as { code: string; column: string }[],
    );
    expect(new Set(faults.map(({ code, column }) => `${code} ${column}`))).toEqual(
      new Set(["organism-missing organism"]),
    );
  });

  it("every line is determined, waits for a person, or cannot be determined for a reason", {
    timeout: 120_000,
  }, async () => {
    const bay = await alderBay(shared.store);
    // 146 of the 161 lines have no organism: the source means no growth by it.
    const settings = { emptyOrganism: "no-growth", midnight: "time" } as const;
    const options = { setAside: true, assumeInpatient: true, settings };
    const result = await importFiles(bay.at("2025-12-01 12:00"), files, options);
    // The three refused lines are of catheters.csv; the marked ones are of moves and catheters.
    expect(resultText(result)).toBe("applied: 316 accepted, 26 marked, 0 unchanged, 3 refused");
    const answers = await shared.store.read((read) => answersOf(read, bay.facilityId));
    const lines = readRows("ward-stays/specimens.csv").map(({ stay = "", kind, collected, organism }) => {
      const answer = answers.get([patientOf.get(stay), kind, collected].join()) ?? "lost";
      return { stay, organism, answer };
    });
    expect(lines).toHaveLength(161);
    const count = (...wanted: string[]) => lines.filter(({ answer }) => wanted.includes(answer)).length;
    // Blood is evidence for urine and has no determination of its own.
    expect({
      evidence: count("evidence"),
      determined: count("negative", "not-usable"),
      setAside: count("set-aside"),
      cannotTell: count("cannot-tell"),
    }).toEqual({ evidence: 111, determined: 44, setAside: 0, cannotTell: 6 });
    const told = lines.filter(({ answer }) => !["evidence", "negative"].includes(answer));
    expect(told.map(({ stay, organism, answer }) => `${stay} ${organism}: ${answer}`)).toEqual([
      "132349 ENTEROCOCCUS SP.: cannot-tell",
      "132349 SERRATIA MARCESCENS: cannot-tell",
      "139932 GRAM POSITIVE COCCUS(COCCI): cannot-tell",
      "167612 YEAST: not-usable",
      "177678 ESCHERICHIA COLI: cannot-tell",
      "180391 ESCHERICHIA COLI: cannot-tell",
      "195911 ESCHERICHIA COLI: cannot-tell",
    ]);
  });
});
