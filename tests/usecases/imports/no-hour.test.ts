import { expect, it } from "vitest";
import { month } from "../../../shared/day.ts";
import { defaultSourceSettings } from "../../../shared/source-settings.ts";
import { readDeterminations } from "../../../src/usecases/cultures/read-determinations.ts";
import { loadMonth } from "../../../src/usecases/months/load-month.ts";
import { readMonthGaps } from "../../../src/usecases/months/read-month-gaps.ts";
import { changeCatheter } from "../../../src/usecases/record/change-catheter.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";
import { type Files, importFiles, ledgerOfAll, resultText } from "./files.ts";

const time = "2024-04-20 12:00";
const settings = { ...defaultSourceSettings, midnight: "no-hour" } as const;
const day = (text: string) => utc(`${text} 00:00`) / 86_400_000;

/** Three patients whose catheter came out on March 8, at an hour that the file does not give. */
const files: Files = {
  "moves.csv": [
    "stay,patient,ward,from,to",
    ...["S1", "S2", "S3"].map((stay) => `${stay},P${stay},A,2024-03-01T08:00,2024-03-15T10:00`),
  ],
  "catheters.csv": [
    "stay,inserted,removed",
    "S1,2024-03-06T09:00,2024-03-08T00:00",
    "S2,2024-03-04T09:00,2024-03-08T00:00",
    "S3,2024-03-04T09:00,2024-03-08T00:00",
  ],
  "reviews.csv": ["stay,day,outcome", "S3,2024-03-08T12:00,remove"],
  "specimens.csv": [
    "stay,kind,collected,organism,count",
    "S1,urine,2024-03-08T00:00,Escherichia coli,>100000",
    "S2,urine,2024-03-08T14:00,Escherichia coli,>100000",
  ],
  "signs.csv": [
    "stay,day,time,sign,present,value",
    "S1,2024-03-08,00:00,temperature,,38.6",
    "S2,2024-03-08,15:00,dysuria,yes,",
    ...["temperature", "suprapubic-tenderness", "costovertebral-pain", "urgency", "frequency"].map(
      (sign) => `S2,2024-03-08,,${sign},no,`,
    ),
  ],
};

onEachDatabase("00:00 that stands for no hour", (fresh) => {
  const shared = sharedStore(fresh);
  const catheterOf = async (stay: string, facilityId: number) =>
    shared.store.read((read) => read.db.catheter.findFirstOrThrow({ where: { stay: { number: stay, facilityId } } }));
  const determined = async (bay: AlderBay, stay: string) => {
    const where = { number: stay, facilityId: bay.facilityId };
    const { patientId } = await shared.store.read((read) => read.db.stay.findFirstOrThrow({ where }));
    const { determinations } = await readDeterminations(bay.at(time), { patientId, family: "us" });
    return determinations[0];
  };
  const catheterDays = async (bay: AlderBay) => {
    const facts = await loadMonth(bay.at(time), { days: { first: day("2024-03-01"), last: day("2024-03-31") } });
    return facts.wards.find(({ wardId }) => wardId === bay.a)?.catheterDays;
  };
  const hourGaps = async (bay: AlderBay) => {
    const { gaps } = await readMonthGaps(bay.at(time), { month: month.parse("2024-03") });
    return gaps
      .filter(({ kind }) => kind.endsWith("no-hour") || kind === "marked-lines")
      .map(({ kind, count, days }) => [kind, count, ...days]);
  };

  it("keeps the day of a removal for eligibility, leaves its census open, and lets a symptom of the day wait", async () => {
    const bay = await alderBay(shared.store, "11:00");
    expect(resultText(await importFiles(bay.at(time), files, { settings }))).toBe(
      "applied: 11 accepted, 5 marked, 0 unchanged, 0 refused",
    );
    // The censuses of March 6 and 7, and twice of March 4 to 7. A review of March 8 at 12:00 says that S3 was in place.
    expect(await catheterDays(bay)).toBe(2 + 4 + 5);
    expect(await hourGaps(bay)).toEqual([
      ["marked-lines", 3],
      ["removal-no-hour", 2, "2024-03-08"],
    ]);
    // Catheter day 3 is the day of the removal, so the fever of that day is catheter-associated.
    expect(await determined(bay, "S1")).toMatchObject({
      outcome: "event",
      event: { criterion: "suti-1a", isCauti: true, dateOfEvent: "2024-03-08", catheterDay: 3 },
    });
    const waiting = await determined(bay, "S2");
    expect(waiting?.outcome).toBe("cannot-tell");
    expect(waiting?.derivation.map(({ lookUp }) => lookUp)).toContainEqual(
      expect.stringContaining("Look up at what hour the catheter was removed on 8 March 2024"),
    );
    expect(await ledgerOfAll(bay.at(time))).toMatchObject({ differences: 0 });
    // A second import of the same files changes nothing.
    expect(resultText(await importFiles(bay.at(time), files, { settings }))).toMatch(/0 accepted, 0 marked, 16 unch/);
    await entered(bay);
  });

  /** A person enters the hour: the census of the day is known, and the symptom came after the removal. */
  async function entered(bay: AlderBay): Promise<void> {
    const { id: catheterId, marks } = await catheterOf("S2", bay.facilityId);
    expect(marks).toBe("no-hour:removedAt");
    const removedAt = utc("2024-03-08 13:00");
    const changes = { removedAt, removedAfterAt: null, removedBeforeAt: null };
    await changeCatheter(bay.at(time), { catheterId, changes, confirm: [], reason: "Removal note read" });
    expect(await determined(bay, "S2")).toMatchObject({
      outcome: "event",
      event: { criterion: "suti-1a", isCauti: true },
    });
    expect(await catheterDays(bay)).toBe(2 + 5 + 5);
    expect(await hourGaps(bay)).toContainEqual(["removal-no-hour", 1, "2024-03-08"]);
    // A later file that still has no hour leaves the one that was entered.
    const later = {
      ...files,
      "catheters.csv": ["stay,inserted,removed,size_fr", "S2,2024-03-04T09:00,2024-03-08T00:00,14"],
    };
    await importFiles(bay.at(time), later, { settings });
    const kept = await catheterOf("S2", bay.facilityId);
    expect([kept.sizeFr, kept.removedAt?.getTime(), kept.marks]).toEqual([14, removedAt, ""]);
  }

  it("is the instant of midnight by default: the day of the removal does not count, and nothing is open", async () => {
    const bay = await alderBay(shared.store, "11:00");
    const { "reviews.csv": _after, ...others } = files;
    await importFiles(bay.at(time), others);
    expect(await catheterDays(bay)).toBe(2 + 4 + 4);
    expect(await hourGaps(bay)).toEqual([]);
    // On catheter day 2 the fever is not catheter-associated, and without an age it may be no element.
    expect(await determined(bay, "S1")).toMatchObject({ outcome: "cannot-tell", event: null });
    expect(await determined(bay, "S2")).toMatchObject({ outcome: "event", event: { criterion: "suti-1a" } });
    expect((await catheterOf("S1", bay.facilityId)).removedAt).toEqual(new Date(utc("2024-03-08 00:00")));
  });

  it.each<[string, number]>([
    ["00:00", 3 + 5 + 5 - 3],
    ["24:00", 2 + 4 + 4],
  ])("leaves no census open at %s: the catheter came out within the day", async (census, days) => {
    const bay = await alderBay(shared.store, census);
    await importFiles(bay.at(time), files, { settings });
    expect([await catheterDays(bay), await hourGaps(bay)]).toEqual([days, [["marked-lines", 3]]]);
  });

  it("lists the census of an insertion or a move without an hour", async () => {
    const bay = await alderBay(shared.store, "11:00");
    const moved = {
      "moves.csv": [
        "stay,patient,ward,from,to",
        "S1,P1,A,2024-03-01T08:00,2024-03-05T00:00",
        "S1,P1,B,2024-03-05T00:00,2024-03-15T10:00",
      ],
      "catheters.csv": ["stay,inserted,removed", "S1,2024-03-04T00:00,2024-03-08T09:00"],
    };
    expect(resultText(await importFiles(bay.at(time), moved, { settings }))).toMatch(/^applied: 0 accepted, 3 marked/);
    expect(await hourGaps(bay)).toEqual([
      ["marked-lines", 3],
      ["insertion-no-hour", 1, "2024-03-04"],
      ["time-no-hour", 2, "2024-03-05"],
    ]);
    expect(await ledgerOfAll(bay.at(time))).toMatchObject({ differences: 0 });
  });
});
