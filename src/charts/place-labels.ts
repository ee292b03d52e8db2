/** A point with the texts that may be written beside it, the fullest first. */
export interface NamedPoint {
  readonly x: number;
  readonly y: number;
  readonly names: readonly string[];
}

/** Where a text is written, and from which end of it. */
export interface LabelPlace {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "middle" | "end";
}

/** The edges between which names must stay. */
export interface LabelRoom {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

type Box = readonly [left: number, top: number, right: number, bottom: number];

/** Text is never measured: about so wide is a letter of 13 units, and so high a line. */
const letter = 7.6;
const [ascent, descent] = [11, 4];
/** Half a mark. */
const markReach = 7;

/** Beside the mark above, below and level with it, then over and under it. */
const candidates: readonly Omit<LabelPlace, "name">[] = [
  { x: 9, y: -6, anchor: "start" },
  { x: -9, y: -6, anchor: "end" },
  { x: 9, y: 15, anchor: "start" },
  { x: -9, y: 15, anchor: "end" },
  { x: 10, y: 4, anchor: "start" },
  { x: -10, y: 4, anchor: "end" },
  { x: 0, y: -11, anchor: "middle" },
  { x: 0, y: 20, anchor: "middle" },
];

/**
 * Places for texts beside their points, so that none covers another text or another point's mark. The points come with
 * the most important first, and each takes its fullest text that has room; one without room for any gets null, and is
 * named by its focus and in the table.
 */
export function placeLabels(points: readonly NamedPoint[], room: LabelRoom): (LabelPlace | null)[] {
  const marks = points.map(({ x, y }): Box => [x - markReach, y - markReach, x + markReach, y + markReach]);
  const taken: Box[] = [];
  return points.map((point, at) => {
    const others = marks.filter((_, other) => other !== at);
    const tries = point.names.flatMap((name) => candidates.map((one) => ({ name, ...one })));
    for (const { name, x, y, anchor } of tries) {
      const place = { name, x: point.x + x, y: point.y + y, anchor };
      const box = boxOf(place);
      const isInside = box[0] >= room.left && box[2] <= room.right && box[1] >= room.top && box[3] <= room.bottom;
      if (!isInside || [...others, ...taken].some((other) => overlap(box, other))) continue;
      taken.push(box);
      return place;
    }
    return null;
  });
}

function boxOf({ name, x, y, anchor }: LabelPlace): Box {
  const width = name.length * letter;
  const left = anchor === "start" ? x : anchor === "end" ? x - width : x - width / 2;
  return [left, y - ascent, left + width, y + descent];
}

function overlap(a: Box, b: Box): boolean {
  return a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
}

/** A name that fits where so many letters have room; what was cut is in the table. */
export function shortName(name: string, letters: number): string {
  const whole = [...name];
  return whole.length <= letters ? name : `${whole.slice(0, letters - 1).join("")}…`;
}
