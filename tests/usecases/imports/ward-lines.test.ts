import { expect, it } from "vitest";
import { describeWard } from "../../../src/usecases/wards/describe-ward.ts";
import { listWards } from "../../../src/usecases/wards/list-wards.ts";
import { readWardHistory } from "../../../src/usecases/wards/read-ward-history.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { importFiles, ledgerOfAll, resultText } from "./files.ts";

const time = "2024-03-10 12:00";
const header = "ward,name,type,setting,beds,opened,closed";
const wards = (...lines: readonly string[]) => ({ "wards.csv": [header, ...lines] });
const moves = (...lines: readonly string[]) => ({ "moves.csv": ["stay,patient,ward,from,to", ...lines] });
const day = (text: string) => Date.parse(text) / 86_400_000;

onEachDatabase("lines of wards", (fresh) => {
  const shared = sharedStore(fresh);

  async function ward(bay: AlderBay, code: string) {
    const all = (await listWards(bay.at(time), {})).wards;
    const { wardId: _, ...found } = all.find((one) => one.code === code) ?? { wardId: 0 };
    return found;
  }

  it("describe a ward from the day on which it opened, and each again when something changes", async () => {
    const bay = await alderBay(shared.store);
    const line = "C,3 East,medical ward,inpatient,28,2024-01-01,";
    expect(resultText(await importFiles(bay.at(time), wards(line)))).toContain("1 accepted");
    const described = {
      ...{ code: "C", name: "3 East", type: "medical ward", setting: "inpatient", beds: 28 },
      ...{ openedDay: "2024-01-01", closedDay: null, namedOnly: false },
    };
    expect(await ward(bay, "C")).toEqual(described);
    const same = "C,3 East,medical ward,inpatient,28,,";
    expect(resultText(await importFiles(bay.at(time), wards(same)))).toContain("1 unchanged");
    // What a line leaves empty stays as it is.
    await importFiles(bay.at(time), wards("C,,,,30,,2024-12-31"));
    expect(await ward(bay, "C")).toEqual({ ...described, beds: 30, closedDay: "2024-12-31" });
  });

  it("take their name from the code when they have none, and no setting when nobody gives one", async () => {
    const bay = await alderBay(shared.store);
    await importFiles(bay.at(time), { "wards.csv": ["ward", "C"] });
    expect(await ward(bay, "C")).toMatchObject({ name: "C", setting: null, namedOnly: false });
    await importFiles(bay.at(time), { "wards.csv": ["ward,beds", "D,4"] }, { assumeInpatient: true });
    expect(await ward(bay, "D")).toMatchObject({ name: "D", setting: "inpatient", beds: 4, namedOnly: true });
  });

  it("change what a ward is from its first day on, and count its days anew", async () => {
    const bay = await alderBay(shared.store);
    await importFiles(bay.at(time), wards("C,3 East,,outpatient,,2024-03-03,"));
    const wardId = (await listWards(bay.at(time), {})).wards.find(({ code }) => code === "C")?.wardId ?? 0;
    await bay.stay("P1", "2024-03-01 08:00", "2024-03-05 08:00", { wardId });
    expect((await ledgerOfAll(bay.at(time))).rows).toBe(0);
    await importFiles(bay.at(time), wards("C,,,inpatient,,,"));
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 3, differences: 0 });
    await importFiles(bay.at(time), wards("C,,,procedure,,2024-03-01,"));
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 0, differences: 0 });
  });

  it("change nothing of a ward that somebody described by hand since, and say so", async () => {
    const bay = await alderBay(shared.store);
    const line = "C,3 East,medical,inpatient,28,,";
    await importFiles(bay.at(time), wards(line));
    const wardId = (await listWards(bay.at(time), {})).wards.find(({ code }) => code === "C")?.wardId ?? 0;
    const said = { wardId, name: "3 East", type: "medical", setting: "outpatient", beds: 28 } as const;
    await describeWard(bay.at(time), { ...said, fromDay: day("2024-03-03"), reason: "Closed for patients at night" });
    const described = await readWardHistory(bay.at(time), { wardId });
    for (const other of ["C,3 East,medical,inpatient,29,,", "C,,,procedure,,2024-01-01,", "C,,,,,,2024-12-31"])
      expect(resultText(await importFiles(bay.at(time), wards(other)))).toContain("1 marked");
    expect(await readWardHistory(bay.at(time), { wardId })).toEqual(described);
    expect(resultText(await importFiles(bay.at(time), wards("C,3 East,medical,outpatient,28,,")))).toContain(
      "1 unchanged",
    );
  });

  it("that only moves name are made without a setting, count nowhere, and count once a line gives them one", async () => {
    const bay = await alderBay(shared.store);
    await importFiles(bay.at(time), moves("S1,P1,C,2024-03-01T08:00,2024-03-05T08:00"));
    expect(await ward(bay, "C")).toMatchObject({ name: "C", setting: null, namedOnly: true });
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 0, differences: 0 });
    expect(resultText(await importFiles(bay.at(time), wards("C,3 East,,inpatient,,,")))).toContain("1 accepted");
    expect(await ward(bay, "C")).toMatchObject({ name: "3 East", setting: "inpatient", namedOnly: false });
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 4, differences: 0 });
  });

  it("that only moves name count as inpatient wards where that is assumed, and stay marked", async () => {
    const bay = await alderBay(shared.store);
    const files = moves("S1,P1,C,2024-03-01T08:00,2024-03-05T08:00");
    await importFiles(bay.at(time), files, { assumeInpatient: true });
    expect(await ward(bay, "C")).toMatchObject({ setting: "inpatient", namedOnly: true });
    expect(await ledgerOfAll(bay.at(time))).toEqual({ rows: 4, differences: 0 });
  });

  it("come before the moves of their folder, whatever the names of the wards", async () => {
    const bay = await alderBay(shared.store);
    const files = { ...moves("S1,P1,zz,2024-03-01T08:00,2024-03-05T08:00"), ...wards("zz,,,inpatient,,,") };
    await importFiles(bay.at(time), files);
    expect(await ward(bay, "zz")).toMatchObject({ namedOnly: false });
    expect((await ledgerOfAll(bay.at(time))).rows).toBe(4);
  });
});
