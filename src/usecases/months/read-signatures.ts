import type {
  listSignedMonths as listEndpoint,
  readSignedMonth as monthEndpoint,
  readMonthSignatures as signaturesEndpoint,
  readSignedText as textEndpoint,
} from "../../../shared/api/month-figures.ts";
import type { Month } from "../../../shared/day.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { type MonthReport, monthReport } from "../../../shared/month-report.ts";
import { refuse } from "../../../shared/problems.ts";
import { monthDays } from "../../domain/days/month.ts";
import { lastingReport } from "../../domain/reports/canonical-text.ts";
import { type CodesWithin, completenessWithin } from "../../domain/reports/completeness.ts";
import { monthDifferences } from "../../domain/reports/month-differences.ts";
import { type SignatureRow, signatures, signedText } from "../../store/signed-months.ts";
import type { Read } from "../../store/store.ts";
import { codesWithin } from "../../store/wards.ts";
import type { Act } from "../act.ts";
import { determineByNow } from "../cultures/determine-by-now.ts";
import type { Reach } from "../reach.ts";
import { censusTaken } from "./census-taken.ts";
import { changesOfMonth } from "./month-changes.ts";
import { readFigures } from "./read-figures.ts";
import { withReasons } from "./with-reasons.ts";

type Signature = OutputOf<typeof signaturesEndpoint>["signatures"][number];

/** A signature as it is answered: what stands for the figures stays within. */
export function signatureShown({ month: _, seen: __, ...signature }: SignatureRow): Signature {
  return signature;
}

/** Who signed a month, and what it says now that it did not say then, of the wards within reach. Refuses `in-the-future`. */
export async function readMonthSignatures(
  act: Act,
  { month, wardIds }: { month: Month } & Reach,
): Promise<OutputOf<typeof signaturesEndpoint>> {
  await censusTaken(act, monthDays(month).first, "/month");
  await determineByNow(act);
  const { facilityId } = act.actor;
  return act.store.read(async (read) => {
    const rows = await signatures(read, facilityId, month);
    const latest = rows.at(-1);
    const text = latest ? await signedText(read, facilityId, latest) : null;
    if (text === null) return { month, signatures: [], differences: [], changes: [] };
    const { report } = await readFigures(read, act, { month, ...(wardIds ? { wardIds } : {}) });
    const reached = await reachedCodes(read, act, wardIds);
    const differences = monthDifferences(within(reportIn(text), reached), within(report, reached));
    const changes = await changesOfMonth(read, act, { month, ...(wardIds ? { wardIds } : {}) });
    return { month, signatures: rows.map(signatureShown), differences, changes };
  });
}

/** A month as it was signed, of the wards within reach. Refuses `not-found`. */
export async function readSignedMonth(
  act: Act,
  { month, number, wardIds }: { month: Month; number: number } & Reach,
): Promise<OutputOf<typeof monthEndpoint>> {
  const { row, text } = await find(act, month, number);
  const reached = await act.store.read((read) => reachedCodes(read, act, wardIds));
  return { month, signature: signatureShown(row), report: withReasons(act.actor, within(reportIn(text), reached)) };
}

/** The very text that was signed. Refuses `not-found`. */
export async function readSignedText(
  act: Act,
  { month, number }: { month: Month; number: number },
): Promise<OutputOf<typeof textEndpoint>> {
  const { row, text } = await find(act, month, number);
  return { month, number, text, digest: row.digest };
}

/** The months that were signed, the latest first, each with its latest signature. */
export async function listSignedMonths({ store, actor }: Act): Promise<OutputOf<typeof listEndpoint>> {
  const rows = await store.read((read) => signatures(read, actor.facilityId));
  // By month and number, so the last one of a month is its latest.
  const latest = new Map(rows.map((row) => [row.month, row]));
  const months = [...latest.values()].reverse();
  return {
    months: months.map((row) => ({ month: row.month, signature: signatureShown(row), signatures: row.number })),
  };
}

async function find({ store, actor }: Act, month: Month, number: number): Promise<{ row: SignatureRow; text: string }> {
  return store.read(async (read) => {
    const row = (await signatures(read, actor.facilityId, month)).find((one) => one.number === number);
    const text = row ? await signedText(read, actor.facilityId, row) : null;
    return row && text !== null ? { row, text } : refuse("not-found", "There is no such signature of this month.");
  });
}

function reportIn(text: string): MonthReport {
  return lastingReport(monthReport.parse({ completeness: null, ...JSON.parse(text) }));
}

type Reached = CodesWithin & { readonly wardIds: readonly number[] };

/** The wards within reach with the codes by which lines may name them; null: all. */
async function reachedCodes(
  read: Read,
  { actor }: Act,
  wardIds: readonly number[] | undefined,
): Promise<Reached | null> {
  return wardIds === undefined ? null : { wardIds, ...(await codesWithin(read, actor.facilityId, wardIds)) };
}

/** A report of the wards within reach; without all of them it has no figures of all wards, and says so. */
function within(report: MonthReport, reached: Reached | null): MonthReport {
  if (reached === null) return report;
  const wards = report.wards.filter(({ wardId }) => reached.wardIds.includes(wardId));
  return {
    ...report,
    wards,
    completeness: report.completeness && completenessWithin(report.completeness, reached),
    total: { figures: [], insertions: { places: [], inserters: [] } },
    cautions: ["Only your units are shown."],
  };
}
