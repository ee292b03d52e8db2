import { expect, it } from "vitest";
import { month as monthText } from "../../../shared/day.ts";
import { defaultSourceSettings } from "../../../shared/source-settings.ts";
import type { Act } from "../../../src/usecases/act.ts";
import { dropImportLine } from "../../../src/usecases/imports/settle-line.ts";
import { readMonthFigures } from "../../../src/usecases/months/read-month-figures.ts";
import { readMonthGaps } from "../../../src/usecases/months/read-month-gaps.ts";
import { readMonthSignatures } from "../../../src/usecases/months/read-signatures.ts";
import { signMonth } from "../../../src/usecases/months/sign-month.ts";
import { addSource } from "../../../src/usecases/settings/change-source.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { importFiles } from "./files.ts";

const time = "2024-06-02 08:00";
const month = monthText.parse("2024-04");
const stays = ["stay,patient,admitted,discharged", "S1,P1,2024-04-02T08:00,2024-04-12T08:00"];
const moves = ["stay,patient,ward,from,to", "S1,P1,A,2024-04-02T08:00,2024-04-12T08:00"];
const signs = ["stay,day,sign,present,value"];
const catheters = ["stay,catheter,inserted,removed"];

/** The kinds of items of April that are about lines and imports. */
async function kindsOf(act: Act): Promise<string[]> {
  const { gaps } = await readMonthGaps(act, { month });
  return gaps.map(({ kind }) => kind).filter((kind) => /^(rejected|dropped|import)/.test(kind));
}

async function sign(act: Act, replaces = 0): Promise<void> {
  const { seen } = await readMonthFigures(act, { month });
  await signMonth(act, { month, seen, replaces, reason: replaces > 0 ? "Lines came to light." : null });
}

onEachDatabase("lines that a month misses, as people of some units and of later days see them", (fresh) => {
  const shared = sharedStore(fresh);

  it("of no readable month are no difference of a month that was signed twice around their import", async () => {
    const { at } = await alderBay(shared.store);
    await importFiles(at(time), { "stays.csv": stays, "moves.csv": moves });
    await sign(at("2024-06-02 09:00"));
    const undated = { "stays.csv": stays, "moves.csv": moves, "signs.csv": [...signs, "S9,someday,dysuria,yes,"] };
    await importFiles(at("2024-06-03 08:00"), undated, { setAside: true });
    await importFiles(at("2024-06-03 09:00"), { "catheters.csv": [...catheters, "S1,C1,2024-04-04T08:00,"] });
    await sign(at("2024-06-03 10:00"), 1);
    expect((await readMonthSignatures(at("2024-06-04 08:00"), { month })).differences).toEqual([]);
  });

  it("of a misspelled unit are said to people of each unit alike, now and as they were signed", async () => {
    const { at, a } = await alderBay(shared.store);
    const odd = [...moves, "S9,P9,Q,2024-04-05T08:00,2024-04-03T08:00"];
    const { importId } = await importFiles(at(time), { "stays.csv": stays, "moves.csv": odd }, { setAside: true });
    await dropImportLine(at(time), { importId, file: "moves.csv", line: 3, reason: "Seen twice" });
    await sign(at("2024-06-02 11:00"));
    const { signatures, differences } = await readMonthSignatures(at("2024-06-02 12:00"), { month, wardIds: [a] });
    expect([signatures.length, differences]).toEqual([1, []]);
    const { gaps } = await readMonthGaps(at(time), { month, wardIds: [a] });
    expect(gaps.map(({ kind }) => kind)).toContain("dropped-lines");
  });

  it("of an import that was refused are missing until one of the same source is stored", async () => {
    const { at } = await alderBay(shared.store);
    const { sourceId } = await addSource(at(time), { name: "Laboratory", settings: defaultSourceSettings });
    await importFiles(at(time), { "signs.csv": [...signs, "S1,2024-04-05,temperature,yes,hot"] }, { sourceId });
    await importFiles(at("2024-06-02 09:00"), { "stays.csv": stays, "moves.csv": moves });
    expect(await kindsOf(at(time))).toEqual(["import-refused"]);
    await importFiles(at(time), { "signs.csv": [...signs, "S1,2024-04-05,dysuria,yes,"] }, { sourceId });
    expect(await kindsOf(at(time))).toEqual([]);
  });
});
