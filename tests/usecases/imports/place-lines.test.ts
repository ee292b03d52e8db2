import { expect, it } from "vitest";
import { month as monthText } from "../../../shared/day.ts";
import { Problem } from "../../../shared/problems.ts";
import { defaultSourceSettings } from "../../../shared/source-settings.ts";
import { lineOfValues } from "../../../src/csv/line-of-values.ts";
import { zoneNamed } from "../../../src/domain/days/zone.ts";
import type { Act } from "../../../src/usecases/act.ts";
import { dropImportLine, repairImportLine } from "../../../src/usecases/imports/settle-line.ts";
import { readMonthFigures } from "../../../src/usecases/months/read-month-figures.ts";
import { readMonthGaps } from "../../../src/usecases/months/read-month-gaps.ts";
import { readMonthSignatures, readSignedText } from "../../../src/usecases/months/read-signatures.ts";
import { signMonth } from "../../../src/usecases/months/sign-month.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { type Files, importFiles, resultText } from "./files.ts";
import { lineItems } from "./line-items.ts";

const time = "2024-06-02 08:00";
const reading = { zone: zoneNamed("UTC"), settings: defaultSourceSettings };
const stays = ["stay,patient,admitted,discharged", "S1,P1,2024-04-02T08:00,2024-04-12T08:00"];
const moves = ["stay,patient,ward,from,to", "S1,P1,A,2024-04-02T08:00,2024-04-12T08:00"];
const catheters = ["stay,catheter,inserted,removed"];
const specimens = ["stay,kind,collected,organism,count"];
const signs = ["stay,day,sign,present,value"];
const reviews = ["stay,day,outcome,indication"];

/** Nine lines that cannot be stored, of every file about patients. */
const nine: Files = {
  "stays.csv": [...stays, "S2,P2,2024-04-20T08:00,soon"],
  "moves.csv": [...moves, "S1,P1,B,2024-04-05T08:00,2024-04-06T08:00", "S2,P2,B,2024-04-20T08:00,2024-04-22T08:00"],
  "catheters.csv": [...catheters, "S1,C1,2024-04-04T08:00,2024-04-03T08:00", "S1,C2,someday,"],
  "specimens.csv": [...specimens, "S1,sputum,2024-04-05T08:00,Escherichia coli,100000"],
  "signs.csv": [...signs, "S1,2024-04-05,temperature,yes,hot", "S1,2024-04-06,itching,yes,"],
  "reviews.csv": [...reviews, "S1,2024-04-05,maybe,"],
};

async function sign(act: Act, text: string, replaces = 0): Promise<string[]> {
  const month = monthText.parse(text);
  const { seen } = await readMonthFigures(act, { month });
  try {
    await signMonth(act, { month, seen, replaces, reason: replaces > 0 ? "Lines came to light." : null });
    return [];
  } catch (error) {
    if (error instanceof Problem) return error.faults.map(({ code, detail }) => `${code}: ${detail}`);
    throw error;
  }
}

onEachDatabase("rejected lines of a month", (fresh) => {
  const shared = sharedStore(fresh);
  const bay = () => alderBay(shared.store);

  it("are named by kind, number, unit and line, and those of stays, moves and catheters keep it from being signed", async () => {
    const { at } = await bay();
    const result = await importFiles(at(time), nine, { setAside: true });
    expect(resultText(result)).toBe("applied: 2 accepted, 0 marked, 0 unchanged, 9 refused");
    expect(await lineItems(at(time), "2024-04")).toEqual([
      "rejected-stays 1 blocks | Unit: B. | stays.csv:3",
      "rejected-moves 2 blocks | Unit: B. | moves.csv:3 moves.csv:4",
      "rejected-catheters 2 blocks | Unit: A. | catheters.csv:2 catheters.csv:3",
      "rejected-specimens 1 | Unit: A. | specimens.csv:2",
      "rejected-signs 2 | Unit: A. | signs.csv:2 signs.csv:3",
      "rejected-reviews 1 | Unit: A. | reviews.csv:2",
    ]);
    expect((await sign(at(time), "2024-04")).filter((fault) => fault.includes("rejected"))).toEqual([
      expect.stringContaining("month-not-ready: 1 line of a stay is rejected"),
      expect.stringContaining("month-not-ready: 2 lines of moves are rejected"),
      expect.stringContaining("month-not-ready: 2 lines of catheters are rejected"),
    ]);
    expect(await lineItems(at(time), "2024-03")).toEqual([]);
    // When the patient of S2 was discharged is not known.
    expect(await lineItems(at(time), "2024-05")).toEqual(["rejected-stays 1 blocks | Unit: B. | stays.csv:3"]);
  });

  it("without a month of their own are a matter of every unsigned month that their import spans", async () => {
    const { at } = await bay();
    const spanning: Files = {
      "stays.csv": [...stays, "S3,P3,2024-02-03T08:00,2024-02-05T08:00"],
      "moves.csv": [...moves, "S3,P3,A,2024-02-03T08:00,2024-02-05T08:00"],
      // Of a stay that is not known, at a time that cannot be read.
      "specimens.csv": [...specimens, "S9,urine,yesterday,Escherichia coli,100000"],
    };
    await importFiles(at(time), spanning, { setAside: true });
    const undated = ["rejected-specimens 1 | Unit not readable: 1. Month not readable: 1. | specimens.csv:2"];
    for (const month of ["2024-02", "2024-03", "2024-04"]) expect(await lineItems(at(time), month)).toEqual(undated);
    for (const month of ["2024-01", "2024-05"]) expect(await lineItems(at(time), month)).toEqual([]);
    // A month that was signed before keeps what it was signed with, and later imports do not reach it.
    expect(await sign(at("2024-06-02 09:00"), "2024-03")).toEqual([]);
    const later = { ...spanning, "signs.csv": [...signs, "S9,someday,dysuria,yes,"] };
    await importFiles(at("2024-06-03 08:00"), later, { setAside: true });
    expect(await lineItems(at("2024-06-03 09:00"), "2024-03")).toEqual(undated);
    expect(await lineItems(at("2024-06-03 09:00"), "2024-02")).toContainEqual(
      expect.stringContaining("rejected-signs 1"),
    );
  });

  it("that are dropped print with their reason, also in the text that is signed", async () => {
    const { at } = await bay();
    const one: Files = {
      ...{ "stays.csv": stays, "moves.csv": moves },
      "catheters.csv": [...catheters, "S1,C1,2024-04-04T08:00,2024-04-03T08:00"],
    };
    const { importId } = await importFiles(at(time), one, { setAside: true });
    expect(await sign(at(time), "2024-04")).toHaveLength(1);
    await dropImportLine(at("2024-06-02 10:00"), {
      importId,
      file: "catheters.csv",
      line: 2,
      reason: "Entered on paper twice",
    });
    expect(await lineItems(at(time), "2024-04")).toEqual(["dropped-lines 1 | Unit: A. | catheters.csv:2"]);
    const month = monthText.parse("2024-04");
    expect(await sign(at("2024-06-02 11:00"), "2024-04")).toEqual([]);
    const { text } = await readSignedText(at(time), { month, number: 1 });
    const item = JSON.parse(text).completeness.find(({ kind }: { kind: string }) => kind === "dropped-lines");
    expect(item.lines).toEqual([
      {
        ...{ importId, file: "catheters.csv", line: 2, wards: ["A"], dated: true, reason: "Entered on paper twice" },
        ...{ by: expect.any(String), at: "2024-06-02T10:00:00.000Z" },
      },
    ]);
    expect(text).not.toContain("P1");
    expect(text).not.toContain("S1");
  });

  it("that come after a month was signed are a difference to what was signed", async () => {
    const { at } = await bay();
    await importFiles(at(time), { "stays.csv": stays, "moves.csv": moves });
    expect(await sign(at("2024-06-02 09:00"), "2024-04")).toEqual([]);
    const month = monthText.parse("2024-04");
    const differences = async () => (await readMonthSignatures(at("2024-06-04 08:00"), { month })).differences;
    expect(await differences()).toEqual([]);
    const late = { "signs.csv": [...signs, "S1,2024-04-05,temperature,yes,hot"] };
    await importFiles(at("2024-06-03 08:00"), late, { setAside: true });
    expect(await differences()).toEqual([
      {
        ...{ wardId: null, ward: null, figure: null, what: "Data quality", signed: "no such line" },
        now: expect.stringContaining("1 line of a sign is rejected"),
      },
    ]);
    expect(await sign(at("2024-06-03 09:00"), "2024-04", 1)).toEqual([]);
    expect(await differences()).toEqual([]);
  });

  it("are told to people of a unit as far as they touch it, or may touch it, without the way to them", async () => {
    const { at, a, b } = await bay();
    const files = { ...nine, "signs.csv": [...signs, "S9,2024-04-05,temperature,yes,hot"] };
    await importFiles(at(time), files, { setAside: true });
    const told = async (wardId: number) => {
      const act = at(time);
      const nurse: Act = { ...act, actor: { ...act.actor, roles: ["bedside"], wardIds: [wardId] } };
      const { gaps } = await readMonthGaps(nurse, { month: monthText.parse("2024-04"), wardIds: [wardId] });
      expect(gaps.flatMap(({ lines }) => lines)).toEqual([]);
      return gaps.filter(({ kind }) => kind.startsWith("rejected")).map(({ kind, count }) => `${kind} ${count}`);
    };
    const unknown = "rejected-signs 1";
    expect(await told(a)).toEqual(["rejected-catheters 2", "rejected-specimens 1", unknown, "rejected-reviews 1"]);
    expect(await told(b)).toEqual(["rejected-stays 1", "rejected-moves 2", unknown]);
  });

  it("are no matter any more once they are repaired, and imports that wait are", async () => {
    const { at } = await bay();
    const one: Files = {
      ...{ "stays.csv": stays, "moves.csv": moves },
      "catheters.csv": [...catheters, "S1,C1,2024-04-04T08:00,2024-04-03T08:00"],
    };
    const { importId } = await importFiles(at(time), one, { setAside: true });
    const values = { stay: "S1", catheter: "C1", inserted: "2024-04-04T08:00", removed: "2024-04-05T08:00" };
    const item = lineOfValues({ file: "catheters.csv", line: 2, values }, reading);
    await repairImportLine(at(time), { importId, item });
    expect(await lineItems(at(time), "2024-04")).toEqual([]);
    // Refused as a whole, and nothing was stored since.
    await importFiles(at("2024-06-02 10:00"), { "signs.csv": [...signs, "S1,2024-04-05,temperature,yes,hot"] });
    expect((await lineItems(at(time), "2024-04")).map((gap) => gap.split(" ")[0])).toEqual(["import-refused"]);
    expect(await lineItems(at(time), "2024-05")).toEqual([]);
    await importFiles(at("2024-06-02 11:00"), { "signs.csv": [...signs, "S1,2024-04-05,temperature,yes,38.5"] });
    expect(await lineItems(at(time), "2024-04")).toEqual([]);
  });

  it("a doubtful line is one of its own kind, and a line that tells a plain fact is none", async () => {
    const { at } = await bay();
    const files: Files = {
      ...{ "stays.csv": stays, "moves.csv": moves },
      // In place on arrival; and a name that is not on the list of organisms.
      "catheters.csv": [...catheters, "S1,C1,2024-04-01T08:00,2024-04-03T08:00"],
      "specimens.csv": [...specimens, "S1,urine,2024-04-05T08:00,Bacterium imaginarium,100000"],
    };
    expect(resultText(await importFiles(at(time), files))).toBe(
      "applied: 2 accepted, 2 marked, 0 unchanged, 0 refused",
    );
    expect(await lineItems(at(time), "2024-04")).toEqual(["marked-lines 1 | Unit: A. | specimens.csv:2"]);
  });
});
