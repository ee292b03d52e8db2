import type { PictureLane, PictureMark, PictureSpan } from "./day-picture.ts";

/** The height of a row of a lane, the room of a day across, and of the words before the lanes. */
export const rowHeight = 26;
export const dayWidth = 46;
export const lanesLeft = 112;

/** The left edge of a day's column. */
export function columnOf(day: number): number {
  return lanesLeft + day * dayWidth;
}

/** A lane at its place, its items in rows so that none lies on another. */
export interface PlacedLane {
  readonly lane: PictureLane;
  readonly top: number;
  readonly height: number;
  readonly spans: readonly { readonly item: PictureSpan; readonly row: number }[];
  readonly marks: readonly { readonly item: PictureMark; readonly row: number }[];
}

/** Gives every item of a lane the first row in which it has room: spans by their days, marks below them, one a day. */
export function placedLane(lane: PictureLane, top: number): PlacedLane {
  const lasts: number[] = [];
  const spans = lane.spans.map((item) => {
    const free = lasts.findIndex((last) => last < item.from);
    const row = free === -1 ? lasts.length : free;
    lasts[row] = item.to;
    return { item, row };
  });
  const taken = new Map<number, number>();
  const marks = lane.marks.map((item) => {
    const row = taken.get(item.day) ?? lasts.length;
    taken.set(item.day, row + 1);
    return { item, row };
  });
  const rows = Math.max(1, lasts.length, ...taken.values());
  return { lane, top, height: rows * rowHeight + 8, spans, marks };
}
