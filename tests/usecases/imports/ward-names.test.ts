import { expect, it } from "vitest";
import { readSentFiles } from "../../../src/csv/sent-files.ts";
import { wards } from "../../../src/store/wards.ts";
import { decideImport } from "../../../src/usecases/imports/decide-import.ts";
import type { WardAnswer } from "../../../src/usecases/imports/intake-item.ts";
import { readImport } from "../../../src/usecases/imports/read-import.ts";
import { receiveImport } from "../../../src/usecases/imports/receive-import.ts";
import {
  keepAnswers,
  questionsAbout,
  wardCodesOf,
  wardNames,
  withWard,
} from "../../../src/usecases/imports/ward-names.ts";
import { workOnImports } from "../../../src/usecases/imports/work-on-imports.ts";
import { listSources } from "../../../src/usecases/settings/list-sources.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { importFiles, resultText } from "./files.ts";

const now = "2024-03-20 10:00";
const header = "stay,patient,ward,from,to";
const moves = (ward: string, stay = "S1") => ({
  "moves.csv": [header, `${stay},P-${stay},${ward},2024-03-02T08:00,2024-03-05T08:00`],
});

onEachDatabase("the wards that files name", (fresh) => {
  const shared = sharedStore(fresh);
  const codes = async (bay: AlderBay) =>
    (await shared.store.read((read) => wards(read, bay.facilityId))).map(({ code }) => code);
  async function bayWith3E(): Promise<AlderBay> {
    const bay = await alderBay(shared.store);
    await bay.addWard("3E", "inpatient");
    return bay;
  }
  /** Imports as the command does; gives what was asked. */
  async function run(bay: AlderBay, ward: string, answers: WardAnswer[] = [], stay = "S1") {
    const asked: string[] = [];
    const ask: Parameters<typeof importFiles>[2] = {
      wards: {
        answers,
        ask: (questions) => {
          asked.push(...questions.map(({ code, near }) => `${code}: ${near.map((one) => one.code).join()}`));
          return true;
        },
      },
    };
    const result = await importFiles(bay.at(now), moves(ward, stay), ask);
    return { asked, text: resultText(result) };
  }

  it("are asked about where a code is similar, and nothing is stored before the answer", async () => {
    const bay = await bayWith3E();
    expect(await run(bay, "3 E")).toEqual({
      asked: ["3 E: 3E"],
      text: "refused: 1 accepted, 0 marked, 0 unchanged, 0 refused",
    });
    expect(await codes(bay)).toEqual(["3E", "A", "B"]);
  });

  it("are taken as answered, now and by the next import of the source, which is asked nothing", async () => {
    const bay = await bayWith3E();
    const first = await run(bay, "3 E", [{ code: "3 E", sameAs: "3E" }]);
    expect(first).toEqual({ asked: [], text: "applied: 1 accepted, 0 marked, 0 unchanged, 0 refused" });
    const second = await run(bay, "3 E", [], "S2");
    expect(second).toEqual({ asked: [], text: "applied: 1 accepted, 0 marked, 0 unchanged, 0 refused" });
    const counts = { "daily-counts.csv": ["ward,day,patients,catheters", "3 E,2024-03-03,2,0"] };
    await importFiles(bay.at(now), counts);
    expect(await codes(bay)).toEqual(["3E", "A", "B"]);
    const { sources } = await listSources(bay.at(now));
    expect(sources[0]?.aliases.map(({ code }) => code)).toEqual(["3 E"]);
    const days = await shared.store.read((read) =>
      read.db.patientDay.count({ where: { ward: { code: "3E", facilityId: bay.facilityId } } }),
    );
    expect(days).toBe(6);
  });

  it("are made where a person says so, and where no code is similar", async () => {
    const bay = await bayWith3E();
    expect((await run(bay, "3-E", [{ code: "3-E", sameAs: null }])).asked).toEqual([]);
    expect((await run(bay, "Dialysis", [], "S2")).asked).toEqual([]);
    expect(await codes(bay)).toEqual(["3-E", "3E", "A", "B", "Dialysis"]);
  });

  it("may be one that the same files describe", async () => {
    const bay = await alderBay(shared.store);
    const described = { "wards.csv": ["ward,name,setting,opened", "4W,4 West,inpatient,2024-01-01"], ...moves("4w") };
    const answers = [{ code: "4w", sameAs: "4W" }];
    const result = await importFiles(bay.at(now), described, { wards: { answers, ask: () => true } });
    expect(resultText(result)).toBe("applied: 2 accepted, 0 marked, 0 unchanged, 0 refused");
    const found = await shared.store.read((read) => wards(read, bay.facilityId));
    expect(found.find(({ code }) => code === "4W")).toMatchObject({ namedOnly: false, settings: [{ name: "4 West" }] });
    expect(await codes(bay)).toEqual(["4W", "A", "B"]);
  });

  it("are asked about on the page as by the command, and the decision answers", async () => {
    const bay = await bayWith3E();
    const act = bay.at(now);
    const text = `${moves("3 E")["moves.csv"].join("\n")}\n`;
    const { importId } = await receiveImport(act, { files: [{ name: "moves.csv", text }] });
    const work = () => workOnImports({ store: shared.store, now: act.now, readFiles: readSentFiles });
    await work();
    expect((await readImport(act, { importId })).wardQuestions).toEqual([
      { code: "3 E", near: [{ code: "3E", name: "Ward 3E" }] },
    ]);
    const decide = (said?: WardAnswer[]) =>
      decideImport(act, { importId, decision: "apply", setAside: false, wards: said });
    expect(await refusalOf(shared.store, () => decide())).toEqual({ code: "ward-unclear", pointer: "/wards" });
    const strange = [
      { code: "3 E", sameAs: "3E" },
      { code: "Z", sameAs: "3E" },
    ];
    expect((await refusalOf(shared.store, () => decide(strange))).code).toBe("ward-unclear");
    await decide([{ code: "3 E", sameAs: "3E" }]);
    await work();
    expect(await codes(bay)).toEqual(["3E", "A", "B"]);
    expect((await readImport(act, { importId })).counts).toMatchObject({ accepted: 1, refused: 0 });
  });

  it("may be asked about by two imports that wait; the same answer to both is one", async () => {
    const bay = await bayWith3E();
    const act = bay.at(now);
    const work = () => workOnImports({ store: shared.store, now: act.now, readFiles: readSentFiles });
    const sent = async (rows: readonly string[]) => {
      const files = [{ name: "moves.csv" as const, text: `${rows.join("\n")}\n` }];
      return (await receiveImport(act, { files })).importId;
    };
    const both = [await sent(moves("3 E")["moves.csv"]), await sent(moves("3 E", "S2")["moves.csv"])];
    await work();
    for (const importId of both) {
      const wards = [{ code: "3 E", sameAs: "3E" }];
      await decideImport(act, { importId, decision: "apply", setAside: false, wards });
      await work();
      expect((await readImport(act, { importId })).counts).toMatchObject({ accepted: 1, refused: 0 });
    }
    expect(await codes(bay)).toEqual(["3E", "A", "B"]);
    expect((await listSources(act)).sources[0]?.aliases.map(({ code }) => code)).toEqual(["3 E"]);
  });

  it("refuse an alias of itself, of a ward, of an unknown ward, and a second answer; nothing is stored", async () => {
    const bay = await bayWith3E();
    await run(bay, "3 E", [{ code: "3 E", sameAs: "3E" }]);
    const [source] = (await listSources(bay.at(now))).sources;
    const keep = (code: string, sameAs: string) => () =>
      shared.store.tx((tx) =>
        keepAnswers(tx, bay.at(now), {
          sourceId: source?.sourceId ?? 0,
          answers: [
            { code: "Old", sameAs: "A" },
            { code, sameAs },
          ],
          described: [],
        }),
      );
    const codeOf = async (code: string, sameAs: string) => (await refusalOf(shared.store, keep(code, sameAs))).code;
    expect(await codeOf("x", "x")).toBe("alias-of-itself");
    expect(await codeOf("B", "A")).toBe("alias-code-is-ward");
    expect(await codeOf("x", "nowhere")).toBe("alias-ward-unknown");
    expect(await codeOf("3 E", "A")).toBe("alias-taken");
    expect(await codeOf("Old", "B")).toBe("alias-taken");
  });

  it("stay as they are written where nothing is known of them", async () => {
    const bay = await bayWith3E();
    await shared.store.read(async (read) => {
      const wardOf = await wardNames(read, bay.facilityId, { answers: [{ code: "3 E", sameAs: "3E" }] });
      expect(["3 E", "3E", "new"].map(wardOf)).toEqual(["3E", "3E", "new"]);
      const found = { codes: new Set(["3e"]), described: new Map<string, string>() };
      expect(await questionsAbout(read, bay.facilityId, found)).toMatchObject([{ code: "3e" }]);
      expect(await questionsAbout(read, bay.facilityId, found, [{ code: "3e", sameAs: null }])).toEqual([]);
    });
    expect(wardCodesOf(null)).toEqual({ questions: [], described: [] });
    const line = { file: "daily-counts.csv", line: 2, raw: "", marks: [] } as const;
    const values = { ward: "3 E", day: 1, patients: 1, catheters: 0 };
    expect(withWard({ ...line, values }, () => "3E").values.ward).toBe("3E");
  });
});
