import { expect, it } from "vitest";
import { signsOf } from "../../../src/store/signs.ts";
import { specimensOf } from "../../../src/store/specimens.ts";
import { correctSpecimen } from "../../../src/usecases/cultures/correct-specimen.ts";
import { readDeterminations } from "../../../src/usecases/cultures/read-determinations.ts";
import { recordSigns } from "../../../src/usecases/cultures/record-signs.ts";
import { mergePatients } from "../../../src/usecases/record/merge-patients.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";
import { importFiles, resultText } from "./files.ts";

const time = "2024-03-20 12:00";
const course = {
  "moves.csv": ["stay,patient,ward,from,to", "S1,P1,A,2024-03-01T08:00,2024-03-12T08:00"],
  "catheters.csv": ["stay,inserted,removed", "S1,2024-03-01T09:00,2024-03-10T09:00"],
};
const header = "stay,specimen,kind,collected,status,organism,group,count";
const specimens = (...lines: string[]) => ({ "specimens.csv": [header, ...lines] });
const signs = (...lines: string[]) => ({ "signs.csv": ["stay,day,time,sign,present,value", ...lines] });

onEachDatabase("specimens and signs of files", (fresh) => {
  const shared = sharedStore(fresh);

  async function told(patientId: number) {
    const [cultures, found] = await shared.store.read(async (read) => [
      await specimensOf(read, [patientId]),
      await signsOf(read, [patientId]),
    ]);
    return [
      ...cultures.map(
        ({ kind, status, version, organisms }) => `${kind} ${status} v${version} ${organisms.map(grown)}`,
      ),
      ...found.map(({ sign, finding, version }) => `${sign} ${finding} v${version}`),
    ];
  }
  const idOf = async (identifier: string) =>
    (
      await shared.store.read((read) =>
        read.db.patient.findFirstOrThrow({ where: { identifier }, orderBy: { id: "desc" } }),
      )
    ).id;

  it("are determined as if a person had recorded them; coming again they change nothing", async () => {
    const bay = await alderBay(shared.store);
    const files = {
      ...course,
      ...specimens("S1,,urine,2024-03-06T08:00,,Escherichia coli,,>100000", "S1,,blood,2024-03-06T08:10,,No growth,,"),
      ...signs("S1,2024-03-05,,temperature,,101.1 F", "S1,2024-03-06,08:00,suprapubic-tenderness,no,"),
    };
    // Ward A is an inpatient ward; the removal of a catheter and the stay are as they are.
    expect(resultText(await importFiles(bay.at(time), files))).toBe(
      "applied: 6 accepted, 0 marked, 0 unchanged, 0 refused",
    );
    const patientId = await idOf("P1");
    const { determinations } = await readDeterminations(bay.at(time), { patientId, family: "us" });
    expect(determinations).toMatchObject([
      { outcome: "event", event: { criterion: "suti-1a", isCauti: true, dateOfEvent: "2024-03-05", wardId: bay.a } },
    ]);
    const before = await told(patientId);
    expect(resultText(await importFiles(bay.at(time), files))).toBe(
      "applied: 0 accepted, 0 marked, 6 unchanged, 0 refused",
    );
    expect(await told(patientId)).toEqual(before);
  });

  it("correct what was recorded, keep what was said before, and leave what a person said since", async () => {
    const bay = await alderBay(shared.store);
    await importFiles(bay.at(time), { ...course, ...specimens("S1,U1,urine,2024-03-06T08:00,preliminary,Rods,,") });
    const patientId = await idOf("P1");
    await recordSigns(bay.at(time), {
      patientId,
      ...{
        day: utc("2024-03-06 00:00") / 86_400_000,
        signs: [{ sign: "temperature", finding: "present", temperature: "38.4" }],
      },
    });
    const later = {
      ...specimens("S1,U1,urine,2024-03-06T08:00,final,Escherichia coli,,10^5"),
      ...signs("S1,2024-03-06,,temperature,,37.9"),
    };
    expect(resultText(await importFiles(bay.at(time), later))).toBe(
      "applied: 2 accepted, 0 marked, 0 unchanged, 0 refused",
    );
    expect(await told(patientId)).toEqual(["urine final v2 Escherichia coli 10^5", "temperature present v2"]);
    const [specimen] = await shared.store.read((read) => specimensOf(read, [patientId]));
    const old = await shared.store.read((read) =>
      read.db.entryVersion.findMany({ where: { kind: "specimen", entryId: specimen?.id ?? 0 } }),
    );
    expect(old.map(({ body, version }) => [version, JSON.parse(body).organisms[0].name])).toEqual([[1, "Rods"]]);
    const changes = { status: "corrected", organisms: [{ name: "No growth" }] } as const;
    await correctSpecimen(bay.at(time), { specimenId: specimen?.id ?? 0, changes, reason: "Contaminated" });
    expect(resultText(await importFiles(bay.at(time), later))).toBe(
      "applied: 0 accepted, 0 marked, 2 unchanged, 0 refused",
    );
    const prelim = specimens("S1,U1,urine,2024-03-06T08:00,preliminary,Other rods,,");
    expect(resultText(await importFiles(bay.at(time), prelim))).toBe(
      "applied: 0 accepted, 1 marked, 0 unchanged, 0 refused",
    );
    expect((await told(patientId))[0]).toBe("urine corrected v3 No growth null");
  });

  it("are set aside with all lines of their specimen, also for a cell that cannot be read", async () => {
    const bay = await alderBay(shared.store);
    const files = {
      ...course,
      ...specimens(
        "S1,,urine,2024-03-06T08:00,,Escherichia coli,,>100000",
        "S1,,urine,2024-03-06T08:00,,Proteus mirabilis,fungus,>100000",
        "S1,U2,urine,2024-03-06T09:00,,Escherichia coli,,>100000",
        "S1,,blood,2024-04-06T09:00,,Sterile,,",
      ),
      ...signs("S1,2024-03-05,9:30,dysuria,yes,"),
    };
    expect(resultText(await importFiles(bay.at(time), files))).toMatch(/^refused: 3 accepted, .* 4 refused$/);
    const { importId } = await importFiles(bay.at(time), files, { setAside: true });
    const rows = await shared.store.read((read) =>
      read.db.importLine.findMany({
        where: { importId, state: "refused" },
        orderBy: [{ file: "asc" }, { line: "asc" }],
      }),
    );
    expect(
      rows.map(({ file, line, faults }) => `${file} ${line} ${JSON.parse(faults ?? "[]").map(faultText)}`),
    ).toEqual([
      "signs.csv 2 csv-time-of-day time",
      "specimens.csv 2 specimen-refused null",
      "specimens.csv 3 csv-word group",
      "specimens.csv 5 in-the-future collected",
    ]);
    expect(await told(await idOf("P1"))).toEqual(["urine final v1 Escherichia coli >100000"]);
  });

  it("that nothing grew contradict a line with a count in one folder, and take it from a later one", async () => {
    const bay = await alderBay(shared.store);
    const [bare, counted] = ["No growth,,", "No growth,,>100000"].map((one) => `S1,U1,urine,2024-03-06T08:00,,${one}`);
    const both = specimens(bare ?? "", counted ?? "");
    const { importId } = await importFiles(bay.at(time), { ...course, ...both }, { setAside: true });
    const rows = await shared.store.read((read) =>
      read.db.importLine.findMany({ where: { importId, state: "refused" }, orderBy: { line: "asc" } }),
    );
    expect(rows.map(({ line, faults }) => `${line} ${JSON.parse(faults ?? "[]").map(faultText)}`)).toEqual([
      "2 specimen-refused null",
      "3 line-contradicts count",
    ]);
    await importFiles(bay.at(time), specimens(bare ?? ""));
    await importFiles(bay.at(time), specimens(counted ?? ""));
    expect((await told(await idOf("P1"))).at(0)).toBe("urine final v2 No growth >100000");
  });

  it("of merged records are stored beside each other, for the record that their stay was made for", async () => {
    const bay = await alderBay(shared.store);
    const moves = [...course["moves.csv"], "S2,P2,A,2024-03-14T08:00,2024-03-16T08:00"];
    await importFiles(bay.at(time), { "moves.csv": moves });
    const [survivor, merged] = [await idOf("P1"), await idOf("P2")];
    await mergePatients(bay.at(time), { fromId: merged, intoId: survivor });
    const both = specimens(
      "S1,U1,urine,2024-03-06T08:00,,Candida albicans,,10^5",
      "S2,U2,urine,2024-03-15T08:00,,No growth,,",
    );
    expect(resultText(await importFiles(bay.at(time), both))).toBe(
      "applied: 2 accepted, 0 marked, 0 unchanged, 0 refused",
    );
    const found = await shared.store.read((read) => specimensOf(read, [survivor]));
    expect(found.map(({ number, patientId }) => [number, patientId])).toEqual([
      ["U1", survivor],
      ["U2", merged],
    ]);
  });
});

function grown({ name, count }: { name: string; count: string | null }): string {
  return `${name} ${count}`;
}

function faultText({ code, column }: { code: string; column: string | null }): string {
  return `${code} ${column}`;
}
