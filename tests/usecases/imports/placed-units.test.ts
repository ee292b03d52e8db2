import { expect, it } from "vitest";
import { month as monthText } from "../../../shared/day.ts";
import { monthDays } from "../../../src/domain/days/month.ts";
import { loadMonth } from "../../../src/usecases/months/load-month.ts";
import { readMonthGaps } from "../../../src/usecases/months/read-month-gaps.ts";
import { mergeWards } from "../../../src/usecases/wards/merge-wards.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { type Files, importFiles } from "./files.ts";

const time = "2024-06-02 08:00";
const month = monthText.parse("2024-04");
const stays = ["stay,patient,admitted,discharged", "S1,P1,2024-04-02T08:00,2024-04-12T08:00"];
const moves = (...rows: string[]) => [
  "stay,patient,ward,from,to",
  "S1,P1,A,2024-04-02T08:00,2024-04-12T08:00",
  ...rows,
];

/** The units that the item of rejected moves names, and how many moves the counts of unit A miss. */
async function unitsOf({ at, a }: AlderBay): Promise<[string | undefined, number | undefined]> {
  const { gaps } = await readMonthGaps(at("2024-06-03 08:00"), { month });
  const facts = await loadMonth(at("2024-06-03 08:00"), { days: monthDays(month) });
  const sentence = gaps.find(({ kind }) => kind === "rejected-moves")?.sentence;
  return [
    /Units?: .*/.exec(sentence ?? "")?.[0],
    facts.wards.find(({ wardId }) => wardId === a)?.missing?.moves.rejected,
  ];
}

onEachDatabase("the units of rejected lines", (fresh) => {
  const shared = sharedStore(fresh);

  it("follow a unit into the one that it was merged into", async () => {
    const bay = await alderBay(shared.store);
    const files: Files = { "stays.csv": stays, "moves.csv": moves("S2,P2,B,2024-04-20T08:00,soon") };
    await importFiles(bay.at(time), files, { setAside: true });
    expect(await unitsOf(bay)).toEqual(["Unit: B.", 0]);
    await mergeWards(bay.at("2024-06-02 09:00"), {
      wardId: bay.b,
      intoWardId: bay.a,
      reason: "One unit with two codes",
    });
    expect(await unitsOf(bay)).toEqual(["Unit: A.", 1]);
  });

  it("follow an alias that the source is given later", async () => {
    const bay = await alderBay(shared.store);
    const files: Files = { "stays.csv": stays, "moves.csv": moves("S2,P2,Ward A,2024-04-20T08:00,soon") };
    await importFiles(bay.at(time), files, { setAside: true });
    expect(await unitsOf(bay)).toEqual(["Unit: Ward A.", 0]);
    const later: Files = {
      "moves.csv": ["stay,patient,ward,from,to", "S3,P3,Ward A,2024-05-02T08:00,2024-05-03T08:00"],
    };
    await importFiles(bay.at(time), later, { wards: { answers: [{ code: "Ward A", sameAs: "A" }], ask: () => true } });
    expect(await unitsOf(bay)).toEqual(["Unit: A.", 1]);
  });

  it("are those that the source means by its aliases", async () => {
    const bay = await alderBay(shared.store);
    const files: Files = { "stays.csv": stays, "moves.csv": moves("S2,P2,Ward A,2024-04-20T08:00,soon") };
    const answers = { answers: [{ code: "Ward A", sameAs: "A" }], ask: () => true };
    await importFiles(bay.at(time), files, { setAside: true, wards: answers });
    expect(await unitsOf(bay)).toEqual(["Unit: A.", 1]);
  });
});
