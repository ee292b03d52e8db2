import { month as monthText } from "../../shared/day.ts";
import type { GapKind } from "../../shared/gap-words.ts";
import { Problem } from "../../shared/problems.ts";
import type { Store } from "../../src/store/store.ts";
import type { Act } from "../../src/usecases/act.ts";
import { recordNoneFound } from "../../src/usecases/months/none-found.ts";
import { readMonthFigures } from "../../src/usecases/months/read-month-figures.ts";
import { readMonthGaps } from "../../src/usecases/months/read-month-gaps.ts";
import { signMonth } from "../../src/usecases/months/sign-month.ts";
import { watchWard } from "../../src/usecases/settings/watch-ward.ts";
import { hospitalIn } from "../databases/hospital.ts";
import { importFiles, resultText } from "../usecases/imports/files.ts";
import type { CorrectFolder } from "./correct-folder.ts";
import { asFiles, cell, type Folder, rowsOf } from "./folder.ts";

/** An item of a month, as a person who signs it sees it. */
export interface Item {
  readonly kind: GapKind;
  readonly count: number;
  readonly blocks: boolean;
  readonly sentence: string;
  /** The code of the unit it belongs to, where it belongs to one. */
  readonly unit: string | null;
  readonly days: readonly string[];
  /** Lines as `moves.csv 12`. */
  readonly lines: readonly string[];
}

/** What came of a folder that was imported into a hospital of its own. */
export interface Imported {
  readonly result: string;
  /** Codes of units about which the dry run asked. */
  readonly asked: readonly string[];
  /** The items of the folder's month, and of the months before and after it: a damaged time can lie in them. */
  readonly items: readonly Item[];
  readonly otherItems: readonly Item[];
  /** Signs the month; gives the sentences of what keeps it from being signed. */
  sign(): Promise<string[]>;
}

/** Imports a folder into a new hospital as a person does who stores the good lines, and reads the items of the month. */
export async function imported(store: Store, { folder, of }: { folder: Folder; of: CorrectFolder }): Promise<Imported> {
  const now = of.readAt * 60_000;
  const hospital = await hospitalIn(store, { zone: "UTC", now: now - 60 * 86_400_000 });
  const act = hospital.at(now);
  const asked: string[] = [];
  const ask = (questions: readonly { code: string }[]) => {
    asked.push(...questions.map(({ code }) => code));
    return false;
  };
  const month = monthText.parse(of.month);
  const result = await importFiles(act, asFiles(folder), { setAside: true, wards: { answers: [], ask } });
  if (of.isWatched) await watchAll(act, of);
  const next = monthText.parse(new Date(now).toISOString().slice(0, 7));
  const before = monthText.parse(new Date(now - 40 * 86_400_000).toISOString().slice(0, 7));
  return {
    ...{ result: resultText(result), asked },
    items: await itemsOf(act, month),
    otherItems: [...(await itemsOf(act, next)), ...(await itemsOf(act, before))],
    sign: () => signed(hospital.at(now + 60_000), month),
  };
}

/** Puts the units of the folder under surveillance, and confirms that no infection was found. */
async function watchAll(act: Act, { folder, month: text }: CorrectFolder): Promise<void> {
  const month = monthText.parse(text);
  const codes = rowsOf(folder, "wards.csv").filter((row) => cell(row, "setting") === "inpatient");
  const known = await act.store.read((read) => read.db.ward.findMany({ where: { facilityId: act.actor.facilityId } }));
  for (const { id: wardId, code } of known) {
    if (!codes.some((row) => cell(row, "ward") === code)) continue;
    await watchWard(act, { wardId, fromMonth: month, toMonth: month, edition: "us-2024" });
    await recordNoneFound(act, { wardId, month });
  }
}

async function itemsOf(act: Act, month: ReturnType<typeof monthText.parse>): Promise<Item[]> {
  const { gaps } = await readMonthGaps(act, { month });
  const wards = await act.store.read((read) => read.db.ward.findMany({ where: { facilityId: act.actor.facilityId } }));
  return gaps.map(({ kind, count, blocks, sentence, wardId, days, lines }) => ({
    ...{ kind, count, blocks, sentence, days },
    unit: wards.find(({ id }) => id === wardId)?.code ?? null,
    lines: lines.map(({ file, line }) => `${file} ${line}`),
  }));
}

async function signed(act: Act, month: ReturnType<typeof monthText.parse>): Promise<string[]> {
  const { seen } = await readMonthFigures(act, { month });
  try {
    await signMonth(act, { month, seen, replaces: 0, reason: null });
    return [];
  } catch (error) {
    if (error instanceof Problem) return error.faults.map(({ detail }) => detail);
    throw error;
  }
}
