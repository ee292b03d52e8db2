import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { censusTime, month } from "../../shared/day.ts";
import { defaultSourceSettings, type SourceSettings, sourceSettings } from "../../shared/source-settings.ts";
import { itemsFrom } from "../csv/intake-items.ts";
import { readFolder } from "../csv/read-folder.ts";
import { monthDays } from "../domain/days/month.ts";
import { zoneNamed } from "../domain/days/zone.ts";
import type { WardQuestion } from "../domain/intake/ward-codes.ts";
import { reports } from "../domain/reports/index.ts";
import type { Act } from "../usecases/act.ts";
import { importLines } from "../usecases/imports/import-lines.ts";
import { loadMonth } from "../usecases/months/load-month.ts";
import { setUpFacility } from "../usecases/settings/set-up-facility.ts";
import { type Command, type CommandContext, exitCodes, UsageError } from "./command.ts";
import { printFaults } from "./print-faults.ts";
import { type SheetFormat, sheetFormats, sheetText } from "./print-sheet.ts";
import { readOptions } from "./read-options.ts";
import { showProgress } from "./show-progress.ts";

/** How the command is called. */
export const reportUsage =
  "npm run report -- --data FOLDER [--month YYYY-MM] [--census HH:MM] [--zone ZONE] [--format table|json|csv] [--by day] [--set-aside]\n  [--empty-organism reject|no-growth] [--midnight time|no-hour]";

/**
 * Loads a folder of files into a database that is thrown away, and prints the days of each ward. Faults go to standard
 * error; the report is printed when nothing was refused, or the refused lines are to be set aside.
 */
export const report: Command = async (context) => {
  const options = reportOptions(context);
  const folder = mkdtempSync(join(tmpdir(), "dwell-report-"));
  try {
    const file = join(folder, "report.sqlite");
    await context.databases.migrate(file);
    const store = context.databases.open(file);
    try {
      return await reportFrom({ store, now: context.clock() }, options, context);
    } finally {
      await store.close();
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

function linesText(count: number): string {
  return count === 1 ? "1 line was" : `${count} lines were`;
}

/** A report is thrown away, so codes that may be one unit are named and counted as written. */
function warnOf(questions: readonly WardQuestion[], { err }: Pick<CommandContext, "err">): false {
  for (const { code, near } of questions) {
    const others = near.map((ward) => ward.code).join(", ");
    err(`Unit ${code} may be another spelling of ${others}; it is counted as a unit of its own.\n`);
  }
  return false;
}

interface ReportOptions {
  readonly data: string;
  readonly days: { first: number; last: number } | null;
  readonly census: ReturnType<typeof censusTime.parse>;
  readonly zone: string;
  readonly format: SheetFormat;
  readonly byDay: boolean;
  readonly setAside: boolean;
  readonly settings: SourceSettings;
}

async function reportFrom(
  at: Pick<Act, "store" | "now">,
  options: ReportOptions,
  context: CommandContext,
): Promise<number> {
  const { zone, census, setAside, settings } = options;
  const person = { name: "Report", roles: ["prevention"] } as const;
  const actor = await setUpFacility(at, { name: "the folder's wards", zone, censusTime: census, person });
  const act: Act = { ...at, actor };
  const items = itemsFrom(readFolder(options.data, { zone: zoneNamed(zone), settings }), context.err);
  const result = await importLines(act, items, {
    dryRun: false,
    setAside,
    assumeInpatient: true,
    wards: { answers: [], ask: (questions) => warnOf(questions, context) },
    onProgress: showProgress(context),
  });
  await printFaults(act.store, result, context.err);
  if (result.refused > 0)
    context.err(
      setAside
        ? `${linesText(result.refused)} set aside and count nowhere.\n`
        : `${linesText(result.refused)} rejected, so nothing was counted. Fix them, or add --set-aside.\n`,
    );
  if (result.state !== "applied") return exitCodes.fault;
  const facts = await loadMonth(act, { days: options.days });
  const sheet = reports[options.byDay ? "ward-days" : "month"](facts);
  // A file of rows has no room for what to know about them.
  if (options.format === "csv") for (const caution of sheet.cautions) context.err(`${caution}\n`);
  await context.out(sheetText(sheet, options.format));
  return exitCodes.well;
}

function reportOptions({ args, clock }: CommandContext): ReportOptions {
  const text = { type: "string" } as const;
  const { values } = readOptions(args, {
    data: text,
    month: text,
    census: { ...text, default: "00:00" },
    zone: { ...text, default: "UTC" },
    format: { ...text, default: "table" },
    by: text,
    "empty-organism": { ...text, default: defaultSourceSettings.emptyOrganism },
    midnight: { ...text, default: defaultSourceSettings.midnight },
    "set-aside": { type: "boolean", default: false },
  });
  const format = sheetFormats.find((known) => known === values.format);
  if (values.data === undefined) throw new UsageError("Name the folder of files with --data.");
  if (!format) throw new UsageError(`--format is one of ${sheetFormats.join(", ")}.`);
  if (values.by !== undefined && values.by !== "day") throw new UsageError("--by takes only the word day.");
  const census = censusTime.safeParse(values.census);
  if (!census.success) throw new UsageError("--census is a time as HH:MM, from 00:00 to 24:00.");
  const wanted = values.month === undefined ? null : month.safeParse(values.month);
  if (wanted && !wanted.success) throw new UsageError("--month is a month as YYYY-MM.");
  const { "empty-organism": emptyOrganism, midnight } = values;
  const settings = sourceSettings.safeParse({ emptyOrganism, midnight });
  if (!settings.success)
    throw new UsageError("--empty-organism is reject or no-growth, and --midnight is time or no-hour.");
  if (!knownZone(values.zone)) throw new UsageError("--zone is an IANA time zone name such as America/New_York.");
  const days = wanted?.success ? monthDays(wanted.data) : null;
  if (days && days.first > zoneNamed(values.zone).dayOf(clock())) throw new UsageError("--month has not begun yet.");
  return {
    data: values.data,
    days,
    census: census.data,
    zone: values.zone,
    format,
    byDay: values.by === "day",
    setAside: values["set-aside"],
    settings: settings.data,
  };
}

function knownZone(name: string): boolean {
  try {
    return zoneNamed(name).name !== "";
  } catch {
    return false;
  }
}
