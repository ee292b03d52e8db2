import type { listImports as list, readImport as one } from "../../../shared/api/imports.ts";
import type { Month } from "../../../shared/day.ts";
import type { InputOf, OutputOf } from "../../../shared/endpoint.ts";
import { refuse } from "../../../shared/problems.ts";
import { type ImportEffects, noEffects } from "../../domain/intake/effects.ts";
import { type ImportTold, importOf, importsOf } from "../../store/imports.ts";
import { namesOf } from "../../store/people.ts";
import { countByFile, hasBrokenFile } from "../../store/set-aside-lines.ts";
import { signedOf } from "../../store/signed-month-changes.ts";
import type { Read } from "../../store/store.ts";
import type { Act } from "../act.ts";
import { wardCodesOf } from "./ward-names.ts";

type Told = OutputOf<typeof one>;
type Summary = OutputOf<typeof list>["imports"][number];
type Counts = Summary["counts"];

const pageSize = 20;
const noCounts: Counts = { waiting: 0, accepted: 0, marked: 0, unchanged: 0, refused: 0, dropped: 0, blank: 0 };

/** Imports of the facility, newest first, a page at a time. */
export function listImports(act: Act, { before }: InputOf<typeof list>): Promise<OutputOf<typeof list>> {
  return act.store.read(async (read) => {
    const rows = await importsOf(read, act.actor.facilityId, { before, count: pageSize + 1 });
    const shown = rows.slice(0, pageSize);
    const imports: Summary[] = [];
    for (const row of shown) imports.push((await countedOf(read, row)).summary);
    return { imports, next: rows.length > pageSize ? (shown.at(-1)?.id ?? null) : null };
  });
}

/** Where an import stands. Refuses `not-found`. */
export function readImport(act: Act, { importId }: InputOf<typeof one>): Promise<Told> {
  return act.store.read(async (read) => {
    const row = await importOf(read, act.actor.facilityId, importId);
    if (!row) return refuse("not-found", "There is no such import in this facility.");
    const { summary, files } = await countedOf(read, row);
    const { effects, months } = effectsOf(row.effects);
    const waits = row.state === "checked";
    return {
      ...summary,
      setAside: row.setAside,
      progress: progressOf(row),
      broken: await hasBrokenFile(read, importId),
      files,
      // Written by the check, in the form of the contract.
      notices: JSON.parse(row.notices ?? "[]") as Told["notices"],
      effects,
      signedMonths: waits ? await signedOf(read, act.actor.facilityId, months) : [],
      wardQuestions: waits ? asked(row.wardCodes) : [],
    };
  });
}

function asked(wardCodes: string | null): Told["wardQuestions"] {
  return wardCodesOf(wardCodes).questions.map(({ code, near }) => ({ code, near: [...near] }));
}

/** What the check wrote, perhaps before a kind of entries was imported at all. */
function effectsOf(written: string | null): { effects: Told["effects"]; months: readonly Month[] } {
  if (written === null) return { effects: null, months: [] };
  const { months = [], ...effects } = JSON.parse(written) as Partial<ImportEffects> & { months?: readonly Month[] };
  return { effects: { ...noEffects, ...effects }, months };
}

/** What was settled of a step that is over is no progress any more. */
function progressOf({ state, done, total }: ImportTold): Told["progress"] {
  if (state !== "staging" && state !== "checking" && state !== "applying") return null;
  return done === null ? null : { done, total };
}

async function countedOf(read: Read, row: ImportTold): Promise<{ summary: Summary; files: Told["files"] }> {
  const { id: importId, state, startedAt, finishedAt, personId, sourceName } = row;
  const files = new Map<string, Counts>();
  const all = { ...noCounts };
  for (const { file, state: of, count } of await countByFile(read, importId)) {
    const name = of === "staged" ? "waiting" : of;
    const own = files.get(file) ?? { ...noCounts };
    files.set(file, { ...own, [name]: own[name] + count });
    all[name] += count;
  }
  const startedByName = (await namesOf(read, [personId])).get(personId) ?? `#${personId}`;
  return {
    summary: { importId, state, startedAt, startedByName, sourceName, finishedAt, counts: all },
    files: [...files].map(([file, counts]) => ({ file, counts })),
  };
}
