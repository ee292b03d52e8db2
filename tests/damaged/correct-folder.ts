import type { Chance } from "../ledger/chance.ts";
import { countedByHand } from "./count-censuses.ts";
import { dayMinutes, type Folder, type Row, timeText } from "./folder.ts";

/** A correct folder of one month of an invented hospital, in UTC. */
export interface CorrectFolder {
  readonly folder: Folder;
  /** `YYYY-MM` */
  readonly month: string;
  /** When it is imported, in minutes since 1970: at noon of the day after the month. */
  readonly readAt: number;
  /** Whether infections of its units are watched: then no culture of the folder can be one. */
  readonly isWatched: boolean;
}

const units = ["3E", "4N", "ICU-2"] as const;
const hour = 60;

/** What is drawn from, and where the month lies. */
interface Drawing {
  readonly chance: Chance;
  readonly begin: number;
  readonly end: number;
  readonly isWatched: boolean;
}

/** One stay with its lines. `end` is when it ends, or null for a patient who is still here. */
interface DrawnStay {
  readonly stay: string;
  readonly patient: string;
  readonly from: number;
  readonly to: number | null;
}

/** Draws a folder in which no line contradicts another and nothing is missing. */
export function correctFolder(chance: Chance): CorrectFolder {
  const [year, month] = [chance.pick([2024, 2025]), chance.below(12)];
  const begin = Date.UTC(year, month, 1) / 60_000;
  const end = Date.UTC(year, month + 1, 1) / 60_000;
  const drawing: Drawing = { chance, begin, end, isWatched: chance.percent(50) };
  // Somebody is on each unit all month, so that no day of it is without a patient.
  const residents = units.flatMap((unit, i) => {
    const stay = {
      stay: `S-${101 + i}`,
      patient: `P-${501 + i}`,
      from: begin - hour * (1 + chance.below(12)),
      to: null,
    };
    return linesOfStay(drawing, stay, [unit]);
  });
  const count = 17 + chance.below(20);
  const others = Array.from({ length: count }, (_, i) => {
    const from = begin + 10 * chance.below(((end - begin) * 9) / 100);
    const to = from + 10 * (30 + chance.below(900));
    const stay = { stay: `S-${201 + i}`, patient: `P-${601 + i}`, from, to: to < end ? to : null };
    return linesOfStay(drawing, stay, wayOf(chance));
  });
  const wards = units.map((ward) => wardRow(ward, "inpatient", begin));
  const rows = [...wards, wardRow("ED", "outpatient", begin), ...residents, ...others.flat()];
  return {
    folder: [...rows, ...countedByHand(rows, { units, begin, end })],
    month: new Date(begin * 60_000).toISOString().slice(0, 7),
    readAt: end + 12 * hour,
    isWatched: drawing.isWatched,
  };
}

function wardRow(ward: string, setting: string, begin: number): Row {
  const cells = { ward, name: `Unit ${ward}`, setting, beds: "24", opened: timeText(begin - dayMinutes).slice(0, 10) };
  return { file: "wards.csv", cells };
}

/** The units of a stay in order; some begin in the emergency department. */
function wayOf(chance: Chance): string[] {
  const first = chance.below(units.length);
  const second = (first + 1 + chance.below(units.length - 1)) % units.length;
  const way = [units[first], ...(chance.percent(40) ? [units[second]] : [])] as string[];
  return chance.percent(30) ? ["ED", ...way] : way;
}

function linesOfStay(drawing: Drawing, stay: DrawnStay, way: readonly string[]): Row[] {
  const { chance } = drawing;
  const { from, to } = stay;
  const rows: Row[] = [
    {
      file: "stays.csv",
      cells: {
        ...{
          stay: stay.stay,
          patient: stay.patient,
          birth_date: `19${30 + chance.below(60)}-0${1 + chance.below(9)}-15`,
        },
        ...{ sex: chance.pick(["female", "male"]), admitted: timeText(from) },
        ...(to === null ? {} : { discharged: timeText(to), disposition: "home" }),
      },
    },
    ...movesOf(drawing, stay, way),
  ];
  return chance.percent(60) ? [...rows, ...catheterLines(drawing, stay)] : rows;
}

/** Unit after unit without a gap; a procedure off the unit lies between two moves and holds no census. */
function movesOf({ chance, end }: Drawing, { stay, patient, from, to }: DrawnStay, way: readonly string[]): Row[] {
  const last = to ?? end;
  const inEd = way[0] === "ED" ? 30 : 0;
  const rest = Math.floor((last - from - inEd) / (way.length - (inEd > 0 ? 1 : 0)) / 10) * 10;
  let at = from;
  return way.flatMap((ward, i): Row[] => {
    const begins = at;
    const isLast = i === way.length - 1;
    at = isLast ? last : begins + (ward === "ED" ? inEd : rest);
    const move = (start: number, until: number | null, absence = ""): Row => ({
      file: "moves.csv",
      cells: {
        ...{ stay, patient, ward, bed: String(1 + chance.below(24)), from: timeText(start), absence },
        to: until === null ? "" : timeText(until),
      },
    });
    const ends = isLast && to === null ? null : at;
    const leaves = (Math.floor(begins / dayMinutes) + 1) * dayMinutes + 9 * hour;
    if (ward === "ED" || leaves + 4 * hour > at || !chance.percent(20)) return [move(begins, ends)];
    return [move(begins, leaves, "procedure"), move(leaves + 2 * hour, ends)];
  });
}

function catheterLines(drawing: Drawing, stay: DrawnStay): Row[] {
  const { chance, end } = drawing;
  const last = stay.to ?? end + 12 * hour;
  const inserted = stay.from + 40 + 10 * chance.below(20);
  const wanted = inserted + 10 * (20 + chance.below(500));
  const removed = wanted < last - hour ? wanted : stay.to === null ? null : stay.to - 20;
  if (removed !== null && removed < inserted + 2 * hour) return [];
  const catheter = stay.stay.replace("S", "C");
  const indication = chance.pick(["retention-or-obstruction", "perioperative"]);
  const times = { inserted: timeText(inserted), removed: removed === null ? "" : timeText(removed) };
  const lines: Row[] = [
    {
      file: "catheters.csv",
      cells: { stay: stay.stay, catheter, kind: "indwelling-urethral", ...times, indication },
    },
  ];
  for (let day = Math.floor(inserted / dayMinutes); day * dayMinutes < (removed ?? end + 11 * hour); day++) {
    const at = day * dayMinutes + 8 * hour + 10 * chance.below(15);
    if (at <= inserted || at >= (removed ?? last)) continue;
    lines.push({
      file: "reviews.csv",
      cells: { stay: stay.stay, catheter, day: timeText(at), outcome: "keep", indication },
    });
  }
  return chance.percent(50) ? [...lines, ...cultureLines(drawing, stay, { inserted, last: removed ?? end })] : lines;
}

function cultureLines(
  { chance, isWatched }: Drawing,
  { stay }: DrawnStay,
  { inserted, last }: { inserted: number; last: number },
): Row[] {
  const collected = inserted + 10 * chance.below(Math.max(1, (last - inserted) / 10));
  const found = isWatched
    ? [["No growth", ""] as const]
    : chance.pick([
        [["No growth", ""] as const],
        [["Escherichia coli", ">100000"] as const],
        [["Klebsiella pneumoniae", ">100000"] as const, ["Enterococcus faecalis", "50000"] as const],
      ]);
  const common = { stay, specimen: stay.replace("S", "U"), kind: "urine", collected: timeText(collected) };
  const day = timeText(collected).slice(0, 10);
  const signs = chance.percent(50) ? ["temperature", "dysuria"] : ["temperature"];
  return [
    ...found.map(([organism, count]): Row => {
      return { file: "specimens.csv", cells: { ...common, status: "final", organism, count } };
    }),
    ...signs.map((sign): Row => {
      const said = sign === "temperature" ? { present: "yes", value: "38.6" } : { present: "no", value: "" };
      return { file: "signs.csv", cells: { stay, day, time: "", sign, ...said } };
    }),
  ];
}
