import { createHash } from "node:crypto";
import type {
  readMonthFigureSheet as readMonthFigureSheetEndpoint,
  readMonthFigures as readMonthFiguresEndpoint,
} from "../../../shared/api/month-figures.ts";
import type { Month } from "../../../shared/day.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import type { MonthReport } from "../../../shared/month-report.ts";
import { monthDays } from "../../domain/days/month.ts";
import { canonicalText, reportContent } from "../../domain/reports/canonical-text.ts";
import { monthFiguresSheet } from "../../domain/reports/month-figures-sheet.ts";
import type { Act } from "../act.ts";
import { determineByNow } from "../cultures/determine-by-now.ts";
import type { Reach } from "../reach.ts";
import { censusTaken } from "./census-taken.ts";
import { changedAfterSigning } from "./changed-after-signing.ts";
import { readFigures } from "./read-figures.ts";
import { withReasons } from "./with-reasons.ts";

type OfMonth = { readonly month: Month } & Reach;

/** A month's figures of the wards within reach, with what stands for them. Refuses `in-the-future`. */
export async function readMonthFigures(act: Act, input: OfMonth): Promise<OutputOf<typeof readMonthFiguresEndpoint>> {
  const report = await figuresOf(act, input);
  return { month: input.month, report, seen: seenDigest(report) };
}

/** The same as rows, with what changed since the month was signed. Refuses `in-the-future`. */
export async function readMonthFigureSheet(
  act: Act,
  input: OfMonth,
): Promise<OutputOf<typeof readMonthFigureSheetEndpoint>> {
  const report = await figuresOf(act, input);
  return { month: input.month, sheet: monthFiguresSheet(report, await changedAfterSigning(act, input)) };
}

async function figuresOf(act: Act, input: OfMonth): Promise<MonthReport> {
  await censusTaken(act, monthDays(input.month).first, "/month");
  await determineByNow(act);
  const { report } = await act.store.read((read) => readFigures(read, act, input));
  const readable = withReasons(act.actor, report);
  return input.wardIds ? ofOwnWards(readable) : readable;
}

/** A report that was made of some wards only says so. */
function ofOwnWards(report: MonthReport): MonthReport {
  const caution = "Only your units are shown. The total covers these units only.";
  return { ...report, cautions: [caution, ...report.cautions] };
}

/** SHA-256 of a text in hexadecimal digits. */
export function digestOf(text: string): string {
  return createHash("sha256").update(text).digest("hex");
}

/** Stands for the figures of a report: the same as long as what is signed for is the same. */
export function seenDigest(report: MonthReport): string {
  return digestOf(canonicalText(reportContent(report)));
}
