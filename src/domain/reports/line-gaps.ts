import type { GapKind } from "../../../shared/gap-words.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import type { IntakeFile } from "../intake/intake-line.ts";
import type { Gap } from "./gaps.ts";

/** A line of a stored import that touches a period and is not in the record, or is doubtful there. No patient is in it. */
export interface HeldLine {
  readonly importId: number;
  readonly file: string;
  readonly line: number;
  readonly state: "refused" | "marked" | "dropped";
  /** Codes of the wards that it touches; null when none can be read. */
  readonly wards: readonly string[] | null;
  /** False: its month cannot be read, so it touches all months of its import. */
  readonly dated: boolean;
  /** Why it was dropped, by whom and when. */
  readonly reason: string | null;
  readonly by: string | null;
  readonly at: Instant | null;
}

/** An import that is not stored, as far as a period is concerned. */
export interface HeldImport {
  readonly importId: number;
  readonly state: "waiting" | "refused";
  readonly isBroken: boolean;
  /** The days that its lines name; null when that is not known. */
  readonly days: { readonly first: DayNumber; readonly last: DayNumber } | null;
}

/** What was sent and is not in the record of a period. */
export interface Held {
  readonly lines: readonly HeldLine[];
  readonly imports: readonly HeldImport[];
}

/** Nothing was held. */
export const nothingHeld: Held = { lines: [], imports: [] };

const kindOfFile: Readonly<Record<IntakeFile, GapKind>> = {
  "stays.csv": "rejected-stays",
  "moves.csv": "rejected-moves",
  "catheters.csv": "rejected-catheters",
  "specimens.csv": "rejected-specimens",
  "signs.csv": "rejected-signs",
  "reviews.csv": "rejected-reviews",
  "daily-counts.csv": "rejected-counts",
  "wards.csv": "rejected-wards",
};

/** What is missing or doubtful because of lines and imports, one gap a kind, what keeps a month from being signed first. */
export function heldGaps({ lines, imports }: Held, { first, last }: { first: DayNumber; last: DayNumber }): Gap[] {
  const touching = imports.filter(({ days }) => days === null || (days.first <= last && days.last >= first));
  const isWhole = (one: HeldImport, state: HeldImport["state"]) => !one.isBroken && one.state === state;
  return [
    ...Object.entries(kindOfFile).flatMap(([file, kind]) =>
      lineGap(
        kind,
        lines.filter((line) => line.state === "refused" && line.file === file),
      ),
    ),
    ...lineGap(
      "dropped-lines",
      lines.filter(({ state }) => state === "dropped"),
    ),
    ...lineGap(
      "marked-lines",
      lines.filter(({ state }) => state === "marked"),
    ),
    ...importGap(
      "import-waiting",
      touching.filter((one) => isWhole(one, "waiting")),
    ),
    ...importGap(
      "import-broken",
      touching.filter(({ isBroken }) => isBroken),
    ),
    ...importGap(
      "import-refused",
      touching.filter((one) => isWhole(one, "refused")),
    ),
  ];
}

function lineGap(kind: GapKind, lines: readonly HeldLine[]): Gap[] {
  if (lines.length === 0) return [];
  const wards = [...new Set(lines.flatMap((line) => line.wards ?? []))].sort();
  return [{ kind, wardId: null, count: lines.length, days: [], held: { lines, wards, imports: [] } }];
}

function importGap(kind: GapKind, imports: readonly HeldImport[]): Gap[] {
  if (imports.length === 0) return [];
  const held = { lines: [], wards: [], imports: imports.map(({ importId }) => importId) };
  return [{ kind, wardId: null, count: imports.length, days: [], held }];
}

/** Catheter lines that were rejected and count nowhere yet, of one ward or of all; those of no known ward touch any. */
export function rejectedLines(lines: readonly HeldLine[], file: IntakeFile, ward?: string): HeldLine[] {
  return lines.filter(
    (line) =>
      line.state === "refused" &&
      line.file === file &&
      (ward === undefined || line.wards === null || line.wards.includes(ward)),
  );
}
