import type { Month } from "../../../shared/day.ts";
import { dayMs } from "../../domain/days/day-number.ts";
import { monthDays } from "../../domain/days/month.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { linesWithin } from "../../domain/reports/completeness.ts";
import type { Held, HeldLine } from "../../domain/reports/line-gaps.ts";
import { facility } from "../../store/facilities.ts";
import { openImports } from "../../store/imports.ts";
import { linesTouching, type TouchingLine } from "../../store/line-months.ts";
import { namesOf } from "../../store/people.ts";
import { signatures } from "../../store/signed-months.ts";
import type { Read } from "../../store/store.ts";
import { codesWithin } from "../../store/wards.ts";
import type { Act } from "../act.ts";
import type { Reach } from "../reach.ts";
import { type WardOf, wardNames } from "./ward-names.ts";

/**
 * The lines that were rejected, dropped or doubtful and touch some months, and the imports that are not stored, as far
 * as the wards within reach are touched. A line whose ward cannot be read may touch any of them. A line whose month
 * cannot be read, imported after a month was signed, is no matter of that month.
 */
export async function readHeld(
  read: Read,
  { actor: { facilityId } }: Pick<Act, "actor">,
  { months, wardIds }: { months: readonly Month[] } & Reach,
): Promise<Held> {
  const touching = await linesTouching(read, facilityId, months);
  const signedAt = touching.some(({ dated }) => !dated) ? await firstSigned(read, facilityId, months) : null;
  const zone = zoneNamed((await facility(read, facilityId)).zone);
  const begin = zone.firstInstantFrom(monthDays(months[0] as Month).first * dayMs);
  const belongs = ({ dated, startedAt, finishedAt }: TouchingLine) =>
    dated || (startedAt >= begin && (signedAt === null || finishedAt <= signedAt));
  const lines = touching.filter(belongs);
  const names = await namesOf(read, [...new Set(lines.flatMap(({ settledBy }) => settledBy ?? []))]);
  const codes = wardIds ? await codesWithin(read, facilityId, wardIds) : null;
  const unitNow = await unitsNow(read, facilityId, lines);
  const held = lines.map(
    ({ settledBy, settledAt: at, sourceId, startedAt: _, finishedAt: __, ...line }): HeldLine => ({
      ...line,
      wards: line.wards && [...new Set(line.wards.map((code) => unitNow.get(sourceId)?.(code) ?? code))].sort(),
      at,
      by: settledBy === null ? null : (names.get(settledBy) ?? `#${settledBy}`),
    }),
  );
  const imports = (await openImports(read, facilityId)).map(({ importId, state, days, isBroken }) => ({
    ...{ importId, days, isBroken, state: state === "refused" ? ("refused" as const) : ("waiting" as const) },
  }));
  return { lines: codes ? linesWithin(held, codes) : held, imports };
}

/**
 * The unit that a code of a line means by now: one that was merged since is the one that it became, and the source of the
 * line may have an alias since. By the line's source.
 */
async function unitsNow(
  read: Read,
  facilityId: number,
  lines: readonly TouchingLine[],
): Promise<ReadonlyMap<number | null, WardOf>> {
  const unitOf = new Map<number | null, WardOf>();
  for (const sourceId of new Set(lines.map((line) => line.sourceId)))
    unitOf.set(sourceId, await wardNames(read, facilityId, { sourceId }));
  return unitOf;
}

async function firstSigned(read: Read, facilityId: number, months: readonly Month[]): Promise<number | null> {
  const [month, another] = months;
  if (month === undefined || another !== undefined) return null;
  return (await signatures(read, facilityId, month)).at(0)?.signedAt ?? null;
}
