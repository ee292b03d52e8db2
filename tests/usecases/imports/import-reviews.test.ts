import { expect, it } from "vitest";
import { notesOf } from "../../../src/store/notes.ts";
import { staysOfCatheters } from "../../../src/store/stays.ts";
import { correctNote } from "../../../src/usecases/record/correct-note.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { type Files, importFiles, linesOf, resultText } from "./files.ts";

const time = "2024-03-10 12:00";
const course = {
  "moves.csv": ["stay,patient,ward,from,to", "S1,P1,A,2024-03-01T08:00,2024-03-08T08:00"],
  "catheters.csv": [
    "stay,catheter,inserted,removed,indication",
    "S1,C1,2024-03-01T09:00,2024-03-06T09:00,perioperative",
  ],
};
const header = "catheter,stay,day,outcome,indication,note,written";
const withReviews = (...lines: string[]): Files => ({ ...course, "reviews.csv": [header, ...lines] });

onEachDatabase("reviews of files", (fresh) => {
  const shared = sharedStore(fresh);

  const reviews = () =>
    shared.store.read(async (read) => {
      const catheters = await read.db.catheter.findMany({ select: { id: true }, orderBy: { id: "desc" }, take: 1 });
      return notesOf(
        read,
        catheters.map(({ id }) => id),
      );
    });
  /** The reviews of the latest catheter, as text. */
  const told = async () =>
    (await reviews()).map(
      ({ at, outcome, indication, remark, writtenAt, version }) =>
        `${new Date(at).toISOString().slice(5, 16)} ${outcome} ${indication} ${remark} written ${new Date(writtenAt).toISOString().slice(5, 16)} v${version}`,
    );

  it("are stored beside their catheter, with the time at which they were written down", async () => {
    const bay = await alderBay(shared.store);
    const files = withReviews(
      "C1,,2024-03-02T09:30,keep,perioperative,Day 1,2024-03-02T18:00",
      ",S1,2024-03-03,ask,,,",
      ",S1,2024-03-06,remove,,,",
    );
    expect(resultText(await importFiles(bay.at(time), files))).toBe(
      "applied: 3 accepted, 2 marked, 0 unchanged, 0 refused",
    );
    expect(await told()).toEqual([
      "03-02T09:30 keep perioperative Day 1 written 03-02T18:00 v1",
      "03-03T12:00 ask null null written 03-10T12:00 v1",
      "03-06T09:00 remove null null written 03-10T12:00 v1",
    ]);
    const numbers = await shared.store.read((read) => staysOfCatheters(read, bay.facilityId, ["C1", "C2"]));
    const stays = [...numbers].map(([number, found]) => [number, found.map(({ stay }) => stay)]);
    expect(stays).toEqual([["C1", ["S1"]]]);
  });

  it("change nothing when they come again, also after somebody corrected them; what is new is a correction", async () => {
    const bay = await alderBay(shared.store);
    const files = withReviews("C1,,2024-03-02T09:30,keep,perioperative,,");
    await importFiles(bay.at(time), files);
    const [note] = await reviews();
    const changes = { indication: "wound-healing" };
    await correctNote(bay.at(time), { noteId: note?.id ?? 0, changes, confirm: [], reason: "Slip" });
    expect(resultText(await importFiles(bay.at(time), files))).toBe(
      "applied: 0 accepted, 0 marked, 3 unchanged, 0 refused",
    );
    expect(await told()).toMatchObject([expect.stringContaining("wound-healing null written 03-10T12:00 v2")]);
    // By the stay this time, and alone: the catheter is recorded.
    const later = { "reviews.csv": [header, ",S1,2024-03-02T09:30,remove,,Changed,"] };
    expect(resultText(await importFiles(bay.at(time), later))).toBe(
      "applied: 1 accepted, 0 marked, 0 unchanged, 0 refused",
    );
    expect(await told()).toEqual(["03-02T09:30 remove null Changed written 03-10T12:00 v3"]);
    const old = await shared.store.read((read) =>
      read.db.entryVersion.findMany({ where: { kind: "note", entryId: note?.id ?? 0 }, orderBy: { version: "asc" } }),
    );
    expect(old.map(({ body }) => JSON.parse(body).indication)).toEqual(["perioperative", "wound-healing"]);
  });

  it("are refused by line and column, and stop the folder", async () => {
    const bay = await alderBay(shared.store);
    const files = withReviews(
      "C1,,2024-03-02T09:30,keep,,,",
      "C9,,2024-03-02T09:30,remove,,,",
      ",,2024-03-02T09:30,remove,,,",
      ",S1,2024-03-07,remove,,,",
      "C1,,2024-03-05T09:30,remove,,,",
    );
    const result = await importFiles(bay.at(time), files);
    expect(resultText(result)).toBe("refused: 3 accepted, 0 marked, 0 unchanged, 4 refused");
    const refused = await shared.store.read((read) =>
      read.db.importLine.findMany({ where: { importId: result.importId, state: "refused" }, orderBy: { line: "asc" } }),
    );
    expect(
      refused.map(({ file, line, faults }) => `${file} ${line} ${JSON.parse(faults ?? "[]").map(faultText)}`),
    ).toEqual([
      "reviews.csv 2 indication-missing indication",
      "reviews.csv 3 catheter-unknown catheter",
      "reviews.csv 4 csv-cell-empty catheter",
      "reviews.csv 5 catheter-unknown stay",
    ]);
  });

  it("keep a later removal from lying before them", async () => {
    const bay = await alderBay(shared.store);
    await importFiles(bay.at(time), withReviews("C1,,2024-03-05T09:30,keep,perioperative,,"));
    const earlier = {
      "catheters.csv": ["stay,catheter,inserted,removed", "S1,C1,2024-03-01T09:00,2024-03-04T09:00"],
    };
    const result = await importFiles(bay.at(time), earlier);
    expect(await linesOf(shared.store, result.importId)).toEqual(["catheters.csv 2 refused"]);
  });

  // Bulk: each review alone, as a person writes it, takes some milliseconds.
  it("are stored by the thousand in seconds", { timeout: 60_000 }, async () => {
    const bay = await alderBay(shared.store);
    const moves = ["stay,patient,ward,from,to"];
    const catheters = ["stay,catheter,inserted"];
    const lines = [header];
    for (let i = 0; i < 400; i++) {
      moves.push(`B${i},Q${i},A,2024-01-01T08:00,`);
      catheters.push(`B${i},K${i},2024-01-01T09:00`);
      for (let day = 2; day < 32; day++)
        lines.push(`K${i},,2024-01-${`${day}`.padStart(2, "0")}T09:00,keep,wound-healing,,`);
    }
    await importFiles(bay.at(time), { "moves.csv": moves, "catheters.csv": catheters });
    const begun = performance.now();
    const result = await importFiles(bay.at(time), { "reviews.csv": lines });
    expect(resultText(result)).toBe("applied: 12000 accepted, 0 marked, 0 unchanged, 0 refused");
    expect(performance.now() - begun).toBeLessThan(25_000);
  });
});

function faultText({ code, column }: { code: string; column: string }): string {
  return `${code} ${column}`;
}
