import type { Chart, ChartHead, ChartTable } from "./chart.ts";
import { columnOf, dayWidth, lanesLeft, type PlacedLane, placedLane, rowHeight } from "./day-rows.ts";
import { spanDrawn, spanPatterns } from "./day-spans.ts";
import { drawing, type Frame, words } from "./frame.ts";
import { focusable, ink, type MarkShape, mark } from "./ink.ts";
import { type SvgNode, svgNode } from "./svg-node.ts";

/** How a span is drawn: each look has its own filling, so that it is told apart in black and white. */
export type SpanLook = "place" | "bar" | "maybe" | "hatched" | "dotted" | "barred" | "outline";

/** Something that lasts for days; both days are included. */
export interface PictureSpan {
  /** Places in the list of days. */
  readonly from: number;
  readonly to: number;
  /** It goes on before or after the days that are drawn. */
  readonly opensBefore?: boolean;
  readonly opensAfter?: boolean;
  readonly look: SpanLook;
  /** A word for the span itself; left out where it has no room. */
  readonly word: string;
  /** All that is said of it. */
  readonly text: string;
}

/** Something of one day. */
export interface PictureMark {
  readonly day: number;
  readonly shape: MarkShape;
  /** At most 6 letters, beside the mark. */
  readonly word: string;
  readonly text: string;
}

/** What is drawn on one line, and stands in one column of the table. */
export interface PictureLane {
  readonly label: string;
  readonly spans: readonly PictureSpan[];
  readonly marks: readonly PictureMark[];
}

/** A facility day: `6` of `Mar`; the month stands where it begins, and above the first day. */
export interface PictureDay {
  readonly number: string;
  readonly month: string;
  /** In the table. */
  readonly words: string;
}

/** What a picture of days is drawn from. */
export interface DayPictureInput extends ChartHead {
  readonly days: readonly PictureDay[];
  /** The heading of the column of days. */
  readonly dayLabel: string;
  readonly lanes: readonly PictureLane[];
  /** A day that stands out through all lanes. */
  readonly marked: { readonly day: number; readonly word: string; readonly text: string } | null;
}

/** The room of the days above the lanes. */
const lanesTop = 62;

/** Days drawn to scale, one column each: what lasted, what was found, and periods around them, a lane each. */
export function dayPicture(input: DayPictureInput): Chart {
  const { days, title, sentence, marked, id } = input;
  let top = lanesTop;
  const lanes = input.lanes.map((lane) => {
    const placed = placedLane(lane, top);
    top += placed.height;
    return placed;
  });
  const width = lanesLeft + days.length * dayWidth + 10;
  const frame: Frame = { width, height: top + 8, left: lanesLeft, right: 10, top: lanesTop, bottom: 8 };
  const parts = [
    spanPatterns(id),
    daysAbove(days, top),
    ...lanes.map((lane) => laneLines(lane, width)),
    ...(marked ? [markedDay(marked, top)] : []),
    ...lanes.flatMap((lane) => laneItems(lane, id)),
  ];
  const pointTexts = [...(marked ? [marked.text] : []), ...lanes.flatMap(textsOf)];
  return { title, sentence, svg: drawing(input, frame, parts), table: tableOf(input), pointTexts };
}

function daysAbove(days: readonly PictureDay[], bottom: number): SvgNode {
  const columns = days.flatMap(({ number, month }, at) => {
    const x = columnOf(at);
    const isFirst = at === 0 || month !== days[at - 1]?.month;
    return [
      svgNode("path", {
        d: `M${x} ${isFirst ? 26 : 44}V${bottom}`,
        stroke: isFirst ? ink.soft : ink.rule,
        class: "chart-rule",
      }),
      ...(isFirst ? [words(month, [x + 4, 38], { bold: true })] : []),
      words(number, [x + dayWidth / 2, 57], { anchor: "middle" }),
    ];
  });
  const end = svgNode("path", { d: `M${columnOf(days.length)} 44V${bottom}`, stroke: ink.rule, class: "chart-rule" });
  return svgNode("g", { "aria-hidden": "true" }, ...columns, end);
}

function laneLines({ lane, top }: PlacedLane, width: number): SvgNode {
  const line = svgNode("path", { d: `M0 ${top}H${width - 10}`, stroke: ink.rule, class: "chart-rule" });
  return svgNode("g", { "aria-hidden": "true" }, line, words(lane.label, [4, top + 20], { color: ink.soft }));
}

/** A frame around the column, with its word above: it reads without color. */
function markedDay({ day, word, text }: NonNullable<DayPictureInput["marked"]>, bottom: number): SvgNode {
  const x = columnOf(day);
  const column = svgNode("rect", {
    ...{ x: x + 1, y: 22, width: dayWidth - 2, height: bottom - 22, fill: "none", class: "chart-signal" },
    ...{ stroke: ink.signal, "stroke-width": 2.5, "stroke-dasharray": "7 3" },
  });
  return focusable(
    text,
    column,
    words(word, [x + dayWidth / 2, 16], { anchor: "middle", bold: true, color: ink.signal }),
  );
}

function laneItems({ top, spans, marks }: PlacedLane, id: string): SvgNode[] {
  const drawnSpans = spans.map(({ item, row }) => focusable(item.text, ...spanDrawn(item, rowTop(top, row), id)));
  const drawnMarks = marks.map(({ item, row }) => {
    const [x, y] = [columnOf(item.day) + 9, rowTop(top, row) + rowHeight / 2];
    const look = item.shape === "ring" ? "day-mark is-open" : "day-mark";
    const shape = svgNode("g", { class: look }, mark(item.shape, [x, y], ink.words));
    return focusable(item.text, shape, words(item.word, [x + 8, y + 4], { halo: true, size: 11 }));
  });
  return [...drawnSpans, ...drawnMarks];
}

function rowTop(top: number, row: number): number {
  return top + 4 + row * rowHeight;
}

function textsOf({ spans, marks }: PlacedLane): string[] {
  return [...spans, ...marks].map(({ item }) => item.text);
}

/** The same by day: in each column what the lane says of the day. */
function tableOf({ title, days, dayLabel, lanes, marked }: DayPictureInput): ChartTable {
  const cell = ({ spans, marks }: PictureLane, at: number): string | null => {
    const said = [
      ...spans.filter(({ from, to }) => from <= at && at <= to).map(({ word, text }) => word || text),
      ...marks.filter(({ day }) => day === at).map(({ text }) => text),
    ];
    return said.length === 0 ? null : said.join("; ");
  };
  const rows = days.map(({ words: day }, at) => [
    marked?.day === at ? `${day}: ${marked.word}` : day,
    ...lanes.map((lane) => cell(lane, at)),
  ]);
  const columns = [dayLabel, ...lanes.map(({ label }) => label)].map((label) => ({ label, unit: null }));
  return { caption: title, columns, rows };
}
