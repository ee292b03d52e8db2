import { defaultSourceSettings } from "../../shared/source-settings.ts";
import { itemsFrom } from "../csv/intake-items.ts";
import { readFolder } from "../csv/read-folder.ts";
import { zoneNamed } from "../domain/days/zone.ts";
import type { WardQuestion } from "../domain/intake/ward-codes.ts";
import type { Act, Store } from "../usecases/act.ts";
import { importLines } from "../usecases/imports/import-lines.ts";
import type { ImportResult, WardAnswer } from "../usecases/imports/intake-item.ts";
import { knownSource, settingsOfOwnSource } from "../usecases/imports/source-of-import.ts";
import { addSource } from "../usecases/settings/change-source.ts";
import {
  firstActor,
  firstActorOrSetUp,
  refuseDemo,
  wardsWithoutSetting,
  zoneOfFacility,
} from "../usecases/settings/find-facility.ts";
import { listSources } from "../usecases/settings/list-sources.ts";
import { type Command, type CommandContext, exitCodes, UsageError } from "./command.ts";
import { printFaults } from "./print-faults.ts";
import { readOptions } from "./read-options.ts";
import { setUpText } from "./set-up-text.ts";
import { showProgress } from "./show-progress.ts";
import { questionText, wardAnswers } from "./ward-answers.ts";
import { withDatabase } from "./with-database.ts";

/** How the command is called. */
export const importUsage =
  "npm run import -- --data FOLDER [--source NAME [--new-source]] [--dry-run] [--set-aside]\n  [--ward CODE=CODE ...] [--new-ward CODE ...]";

/** Imports a folder of files into the record. The service must not run on the same SQLite file meanwhile. */
export const importFolder: Command = async (context) => {
  const { values } = readOptions(context.args, {
    data: { type: "string" },
    source: { type: "string" },
    "new-source": { type: "boolean", default: false },
    ward: { type: "string", multiple: true, default: [] },
    "new-ward": { type: "string", multiple: true, default: [] },
    "dry-run": { type: "boolean", default: false },
    "set-aside": { type: "boolean", default: false },
  });
  const { data, source, "new-source": newSource, "dry-run": dryRun, "set-aside": setAside } = values;
  if (data === undefined) throw new UsageError("Name the folder of files with --data.");
  if (newSource && source === undefined) throw new UsageError("Name the new source with --source.");
  return withDatabase(context, async (store) => {
    await refuseDemo(store);
    const from = source === undefined ? null : { name: source, isNew: newSource };
    const answers = wardAnswers(values);
    const given = { data, from, dryRun, setAside, answers };
    const { result, isUnclear } = await importInto(store, context, given);
    await printFaults(store, result, context.err);
    if (result.state === "applied") await nameUncounted(store, context.err);
    await context.out(resultText(result, { setAside, isUnclear }));
    if (isUnclear) return exitCodes.fault;
    return result.refused > 0 && !(setAside && result.state === "applied") ? exitCodes.fault : exitCodes.well;
  });
};

async function importInto(
  store: Store,
  context: CommandContext,
  given: GivenImport,
): Promise<{ result: ImportResult; isUnclear: boolean }> {
  const now = context.clock();
  const known = await firstActor(store);
  if (known === null) context.err(`${setUpText(context.config)}\n`);
  const actor = known ?? (await firstActorOrSetUp({ store, now }, context.config.facility));
  const { data, from, dryRun, setAside, answers } = given;
  const act = { store, actor, now };
  const source = from && (await sourceFrom(act, from));
  const zone = zoneNamed(await zoneOfFacility(store, actor));
  const settings = source?.settings ?? (await settingsOfOwnSource(store, actor));
  const items = itemsFrom(readFolder(data, { zone, settings }), context.err);
  let isUnclear = false;
  const ask = (questions: readonly WardQuestion[]): boolean => {
    for (const question of questions) context.err(questionText(question));
    isUnclear = questions.length > 0;
    return isUnclear;
  };
  const wards = { answers, ask };
  const options = { dryRun, setAside, assumeInpatient: false, wards, onProgress: showProgress(context) };
  const result = await importLines(act, items, source ? { ...options, sourceId: source.id } : options);
  return { result, isUnclear };
}

interface GivenImport {
  readonly data: string;
  readonly from: NamedSource | null;
  readonly dryRun: boolean;
  readonly setAside: boolean;
  readonly answers: readonly WardAnswer[];
}

/** A source as the command names it. */
interface NamedSource {
  readonly name: string;
  readonly isNew: boolean;
}

async function sourceFrom(act: Act, { name, isNew }: NamedSource) {
  const isKnown = (await listSources(act)).sources.some((source) => source.name === name);
  if (isNew && !isKnown) await addSource(act, { name, settings: defaultSourceSettings });
  return knownSource(act, name);
}

/** Wards that count nowhere because nobody said what they are: the commonest surprise after a first import. */
async function nameUncounted(store: Store, err: (text: string) => void): Promise<void> {
  const actor = await firstActor(store);
  const codes = actor === null ? [] : await wardsWithoutSetting(store, actor);
  if (codes.length > 0)
    err(
      `These units are not counted, because their setting is not recorded: ${codes.join(", ")}. Add them to wards.csv with their setting: inpatient, outpatient or procedure.\n`,
    );
}

const endings = {
  applied: "Stored.",
  refused: "Nothing was stored, because lines were rejected. Fix them, or add --set-aside.",
  "dry-run": "This was a dry run: nothing was stored.",
} as const;

function resultText(result: ImportResult, { setAside, isUnclear }: { setAside: boolean; isUnclear: boolean }): string {
  const { accepted, marked, unchanged, refused, state } = result;
  const counts = `Lines: ${accepted} accepted, ${marked} accepted and marked, ${unchanged} seen before, ${refused} refused.`;
  if (state === "applied" && accepted + marked === 0) return `${counts}\nNothing new: nothing was changed.\n`;
  if (state === "applied" && refused > 0 && !setAside)
    return `${counts}\nStored. Lines that contradict newer entries were rejected and are held for repair.\n`;
  if (state === "refused" && isUnclear)
    return `${counts}\nNothing was stored, because it is not clear which unit a code means. Answer with --ward or --new-ward, and import again.\n`;
  return `${counts}\n${signedText(result)}${state in endings ? endings[state as keyof typeof endings] : state}\n`;
}

function signedText({ signedMonths = [] }: ImportResult): string {
  return signedMonths.length === 0 ? "" : `It touches signed months: ${signedMonths.join(", ")}.\n`;
}
