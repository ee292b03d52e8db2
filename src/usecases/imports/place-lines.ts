import { monthOf, monthsFromTo, nextMonth } from "../../domain/days/month.ts";
import { type Zone, zoneNamed } from "../../domain/days/zone.ts";
import { daysTouched, isDoubtful, type KnownStay, staysOfLines, wardsTouched } from "../../domain/intake/line-about.ts";
import { stands, wardStaysInOrder } from "../../domain/timeline/timeline.ts";
import { facility } from "../../store/facilities.ts";
import { daysOfImport, importOf } from "../../store/imports.ts";
import { type NamedLine, namedLines, type PlacedLine, placeLines } from "../../store/line-months.ts";
import type { LinePlace } from "../../store/set-aside-lines.ts";
import { ownersOfStays, staysOfCatheters } from "../../store/stays.ts";
import type { Read, Tx } from "../../store/store.ts";
import { loadTimelines } from "../../store/timelines.ts";
import { wardCodes } from "../../store/wards.ts";
import { type Act, recording } from "../act.ts";
import { wardNames } from "./ward-names.ts";

const linesAtATime = 1000;

/**
 * Writes down which months the rejected and doubtful lines of an import touch, in short transactions. A line without
 * days of its own takes those of the stay that it names, from the record or from the import's other rejected lines, or
 * else the days of its import. Broken off, the same call does it again.
 */
export async function placeImport(act: Act, importId: number): Promise<void> {
  const rejected: { file: string; about: NonNullable<NamedLine["about"]> }[] = [];
  for await (const page of pages(act, importId))
    for (const { file, about, marks } of page)
      if (marks === null && about !== null && (file === "stays.csv" || file === "moves.csv"))
        rejected.push({ file, about });
  const notStored = staysOfLines(rejected);
  for await (const page of pages(act, importId))
    await act.store.tx((tx) => place(tx, act, { importId, lines: page, notStored }));
}

/** The same of one line, which was repaired and is doubtful still. */
export async function placeLine(tx: Tx, act: Act, { importId, ...only }: LinePlace): Promise<void> {
  const lines = await namedLines(tx, importId, { only });
  await place(tx, act, { importId, lines, notStored: new Map() });
}

async function* pages({ store }: Act, importId: number): AsyncIterable<NamedLine[]> {
  let after: NamedLine | null = null;
  do {
    const last: NamedLine | null = after;
    const page: NamedLine[] = await store.read((read) =>
      namedLines(read, importId, { after: last, count: linesAtATime }),
    );
    if (page.length > 0) yield page;
    after = page.length < linesAtATime ? null : (page.at(-1) ?? null);
  } while (after !== null);
}

interface Given {
  readonly importId: number;
  readonly lines: readonly NamedLine[];
  /** Stays of which only rejected lines tell. */
  readonly notStored: ReadonlyMap<string, KnownStay>;
}

async function place(tx: Tx, act: Act, { importId, lines, notStored }: Given): Promise<void> {
  const { facilityId } = act.actor;
  const zone = zoneNamed((await facility(tx, facilityId)).zone);
  const today = zone.dayOf(act.now);
  const ofImport = await daysOfImport(tx, importId);
  const sourceId = (await importOf(tx, facilityId, importId))?.sourceId ?? null;
  // A line that could not be read has its unit as the source writes it.
  const wardOf = await wardNames(tx, facilityId, { sourceId });
  const told = lines.filter(({ file, marks }) => marks === null || isDoubtful(file, marks));
  const stayOf = await staysNamed(tx, facilityId, told);
  const stays = await knownStays(tx, { facilityId, zone }, [...new Set(told.flatMap((line) => stayOf(line) ?? []))]);
  const placed = told.flatMap((line): PlacedLine[] => {
    const { file, line: number, about, marks } = line;
    const named = stayOf(line);
    const recorded = named === null ? undefined : stays.get(named);
    const stay = recorded ?? notStored.get(named ?? "") ?? null;
    // A recorded stay without an end lasts; of others nothing is known beyond the days of the import.
    const latest = recorded ? today : Math.min(today, ofImport?.last ?? today);
    const own = about && daysTouched(about, stay, latest);
    // A stored line of a ward tells nothing of a month.
    if (own === null && marks !== null) return [];
    const days = own ?? ofImport;
    const months = days ? monthsFromTo({ first: days.first, last: Math.min(days.last, today) }) : [];
    const codes = about && wardsTouched(about, stay, own?.own ?? days ?? { first: 0, last: today }, file);
    const wards = codes && [...new Set(codes.map(wardOf))].sort();
    // Without an end it lasts: the months that are still to come miss it too, until it is fixed or dropped.
    const openFrom = marks === null && own?.isOpen ? nextMonth(months.at(-1) ?? monthOf(today)) : null;
    return [{ importId, file, line: number, months, openFrom, wards, dated: own !== null }];
  });
  // The lines were stored in transactions of their own, with their entries in the audit trail.
  tx.trace.act ??= { by: recording(act), action: "import-lines", details: { importId } };
  await placeLines(tx, facilityId, placed);
}

/** The number of the stay that a line is about: named by itself, or by its catheter when one stay alone has that. */
async function staysNamed(
  read: Read,
  facilityId: number,
  lines: readonly NamedLine[],
): Promise<(line: NamedLine) => string | null> {
  const catheters = lines.flatMap(({ about }) => (about?.stay == null ? (about?.catheter ?? []) : []));
  const ofCatheter = await staysOfCatheters(read, facilityId, [...new Set(catheters)]);
  return ({ about }) => {
    if (about === null || about.stay !== null) return about?.stay ?? null;
    const found = about.catheter === null ? [] : (ofCatheter.get(about.catheter) ?? []);
    return new Set(found.map(({ stay }) => stay)).size === 1 ? (found[0]?.stay ?? null) : null;
  };
}

/** The recorded stays of these numbers, with their days and wards; numbers that no standing stay has are left out. */
async function knownStays(
  read: Read,
  { facilityId, zone }: { facilityId: number; zone: Zone },
  numbers: readonly string[],
): Promise<Map<string, KnownStay>> {
  const owners = await ownersOfStays(read, facilityId, numbers);
  const timelines = await loadTimelines(read, [...new Set([...owners.values()].map(({ survivorId }) => survivorId))]);
  const codes = await wardCodes(read, facilityId);
  const days = (start: number, end: number | null) => ({
    first: zone.dayOf(start),
    last: end === null ? null : zone.dayOf(end),
  });
  return new Map(
    [...owners].flatMap(([number, { survivorId, stayId }]): [string, KnownStay][] => {
      const stay = timelines.get(survivorId)?.stays.find((one) => one.id === stayId && stands(one));
      if (!stay) return [];
      const wards = wardStaysInOrder(stay).map(({ wardId, startAt, endAt }) => ({
        code: codes.get(wardId) ?? `#${wardId}`,
        ...days(startAt, endAt),
      }));
      return [[number, { ...days(stay.admittedAt, stay.dischargedAt), wards }]];
    }),
  );
}
