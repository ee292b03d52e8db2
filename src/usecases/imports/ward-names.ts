import { refuse } from "../../../shared/problems.ts";
import type { IntakeLine } from "../../domain/intake/intake-line.ts";
import { type WardNamed, type WardQuestion, wardQuestions } from "../../domain/intake/ward-codes.ts";
import { lockFacility } from "../../store/facilities.ts";
import type { Read, Tx } from "../../store/store.ts";
import { addAlias, aliasesOf } from "../../store/ward-aliases.ts";
import { addWard, mergedCodes, wards } from "../../store/wards.ts";
import { type Act, recording } from "../act.ts";
import type { WardAnswer } from "./intake-item.ts";

/** Gives each code of a source's files as the ward has it that it means; a code that means none stays as it is. */
export type WardOf = (code: string) => string;

/**
 * How a source names wards: by their codes, by codes of wards that were merged into them, and by its aliases. `answers`
 * are those of an import that is only tried.
 */
export async function wardNames(
  read: Read,
  facilityId: number,
  { sourceId, answers = [] }: { readonly sourceId?: number | null; readonly answers?: readonly WardAnswer[] },
): Promise<WardOf> {
  const codes = new Map((await wards(read, facilityId)).map(({ id, code }) => [id, code]));
  const own = new Set(codes.values());
  const others = new Map(await mergedCodes(read, facilityId));
  const aliases = sourceId == null ? [] : await aliasesOf(read, facilityId, sourceId);
  for (const { code, wardId } of aliases) others.set(code, codes.get(wardId) ?? code);
  for (const { code, sameAs } of answers) if (sameAs !== null) others.set(code, sameAs);
  return (code) => (own.has(code) ? code : (others.get(code) ?? code));
}

/** A line with the code of the ward that it means. Lines of wards.csv keep what they describe. */
export function withWard<Line extends IntakeLine>(line: Line, wardOf: WardOf): Line {
  if (line.file === "wards.csv" || !("ward" in line.values)) return line;
  const ward = wardOf(line.values.ward);
  return ward === line.values.ward ? line : { ...line, values: { ...line.values, ward } };
}

/** What the files of an import name that no ward is, or is yet. */
export interface NewWards {
  /** Every code that no ward has. */
  readonly codes: ReadonlySet<string>;
  /** Codes that wards.csv of the import describes, with the name given there. */
  readonly described: ReadonlyMap<string, string>;
}

/** What an import that was tried keeps of the codes in its files, for the person who decides. */
export interface WardCodes {
  readonly questions: readonly WardQuestion[];
  readonly described: readonly string[];
}

/** {@link WardCodes} as the import has them; none where it was tried before codes were compared. */
export function wardCodesOf(json: string | null): WardCodes {
  return json === null ? { questions: [], described: [] } : (JSON.parse(json) as WardCodes);
}

/** What a person is asked about the new codes of an import. Answered codes are not asked again. */
export async function questionsAbout(
  read: Read,
  facilityId: number,
  { codes, described }: NewWards,
  answers: readonly WardAnswer[] = [],
): Promise<WardQuestion[]> {
  const answered = new Set(answers.map(({ code }) => code));
  const recorded = (await wards(read, facilityId)).map(({ code, settings }): WardNamed => {
    return { code, name: settings.at(-1)?.name ?? code };
  });
  const inFiles = [...described].map(([code, name]): WardNamed => ({ code, name }));
  return wardQuestions(
    [...codes].filter((code) => !answered.has(code)),
    [...recorded, ...inFiles],
  );
}

/**
 * Keeps the answers as aliases of the import's source. A ward that the import itself describes is made for it.
 * Refuses `alias-of-itself`, `alias-taken`, `alias-code-is-ward` and `alias-ward-unknown`; then nothing is stored.
 */
export async function keepAnswers(
  tx: Tx,
  act: Act,
  given: { sourceId: number; answers: readonly WardAnswer[]; described: readonly string[] },
): Promise<void> {
  const aliases = given.answers.filter((answer) => answer.sameAs !== null);
  if (aliases.length === 0) return;
  const by = recording(act);
  await lockFacility(tx, by.facilityId);
  const merged = new Map(await mergedCodes(tx, by.facilityId));
  const taken = new Map((await aliasesOf(tx, by.facilityId, given.sourceId)).map(({ code, wardId }) => [code, wardId]));
  const known = new Map((await wards(tx, by.facilityId)).map(({ id, code }) => [code, id]));
  for (const { code, sameAs } of aliases as readonly (WardAnswer & { sameAs: string })[]) {
    const pointer = "/wards";
    if (sameAs === code) refuse("alias-of-itself", `The code ${code} cannot be an alias of itself.`, { pointer });
    if (known.has(code) || merged.has(code))
      refuse("alias-code-is-ward", `The code ${code} is the code of a unit.`, { pointer });
    const answered = taken.get(code);
    // Another import that waited has given the same answer meanwhile.
    if (answered !== undefined && answered === known.get(sameAs)) continue;
    if (answered !== undefined)
      refuse("alias-taken", `The code ${code} was answered already for this source.`, { pointer });
    const target = merged.get(sameAs);
    if (target !== undefined)
      refuse("alias-ward-unknown", `The unit ${sameAs} was merged into ${target}.`, { pointer });
    let wardId = known.get(sameAs);
    if (wardId === undefined && !given.described.includes(sameAs))
      return refuse("alias-ward-unknown", `No unit has the code ${sameAs}.`, { pointer });
    wardId ??= await addWard(tx, by, { code: sameAs, namedOnly: true });
    known.set(sameAs, wardId);
    await addAlias(tx, by, { sourceId: given.sourceId, code, wardId });
    taken.set(code, wardId);
  }
}
