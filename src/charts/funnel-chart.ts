import type { Chart, ChartHead } from "./chart.ts";
import { figureText, notFinalText, tickText } from "./figure-text.ts";
import { bottomAxis, drawing, edgesOf, plotFrame, valueAxis, words } from "./frame.ts";
import { type FunnelScales, funnelLines } from "./funnel-lines.ts";
import { focusable, ink, type MarkShape, mark } from "./ink.ts";
import { placeLabels, shortName } from "./place-labels.ts";
import { linearScale, ticksTo, ticksWithin } from "./scale.ts";
import type { SvgNode } from "./svg-node.ts";

/** Where a ward lies on a funnel. */
export type FunnelPosition = "inside" | "outside-inner" | "outside-outer";

/** A ward on a funnel. A ward without a rate is in the table alone, with the reason. */
export interface FunnelWard {
  readonly name: string;
  /** Null where none were counted. */
  readonly events: number | null;
  readonly days: number;
  readonly rate: number | null;
  /** The inner limits at its own days; null without a rate. */
  readonly lower: number | null;
  readonly upper: number | null;
  readonly position: FunnelPosition;
  readonly reason: string | null;
  /** Cultures behind its rate that are not decided. */
  readonly open?: number | undefined;
}

/** A pair of limits over the days, from the left end of the axis to its right end, drawn as two lines. */
export interface FunnelLine {
  /** Such as `95%`. */
  readonly name: string;
  readonly places: readonly { readonly days: number; readonly lower: number; readonly upper: number }[];
}

/** What a funnel is drawn from; rates are in the unit that `unit` names. */
export interface FunnelInput extends ChartHead {
  /** Such as `per 1,000 catheter-days`. */
  readonly unit: string;
  /** Such as `catheter-days`. */
  readonly daysUnit: string;
  /** Such as `CAUTIs`. */
  readonly eventsUnit: string;
  readonly target: number;
  readonly targetName: string;
  readonly inner: FunnelLine;
  readonly outer: FunnelLine;
  readonly wards: readonly FunnelWard[];
}

type DrawnWard = FunnelWard & { readonly rate: number };

/** Letters of a name beside its mark. */
const longestName = 12;

const shapes: Readonly<Record<FunnelPosition, MarkShape>> = {
  inside: "circle",
  "outside-inner": "triangle",
  "outside-outer": "diamond",
};

/** A funnel: rates of wards over their days, with the limits between which chance alone would put them. */
export function funnelChart(input: FunnelInput): Chart {
  const { unit, daysUnit, eventsUnit, inner, wards, title, sentence } = input;
  const drawn = wards.flatMap((ward) => (ward.rate === null ? [] : [{ ...ward, rate: ward.rate }]));
  const { rateTicks, dayTicks, ...scales } = axesOf(input, drawn);
  const { x, y } = scales;
  const texts = drawn.map((ward) => textOf(ward, input));
  const parts = [
    valueAxis(plotFrame, y, { ticks: rateTicks, label: unit }),
    bottomAxis(plotFrame, { places: dayTicks.map((tick) => ({ at: x(tick), text: tickText(tick) })), label: daysUnit }),
    ...funnelLines(input, scales),
    ...pointsOf(drawn, texts, scales),
  ];
  const round = (value: number | null) => (value === null ? null : Number(value.toFixed(2)));
  const rows = wards.map(({ name, events, days, rate, lower, upper, position, reason, open }) => [
    ...[name, events, days, round(rate), round(lower), round(upper)],
    reason ?? `${positionWords(position, input)}${notFinalText(open)}`,
  ]);
  const columns = [
    { label: "Unit", unit: null },
    { label: "Events", unit: eventsUnit },
    { label: "Days", unit: daysUnit },
    ...["Rate", `Lower ${inner.name} limit`, `Upper ${inner.name} limit`].map((label) => ({ label, unit })),
    { label: "Place", unit: null },
  ];
  const table = { caption: title, columns, rows };
  return { title, sentence, svg: drawing(input, plotFrame, parts), table, pointTexts: texts };
}

/**
 * The axis of days holds the limits from end to end. That of rates holds every rate, and the inner limits up to two and
 * a half times of it: those of very few days would flatten all the rest.
 */
function axesOf({ target, inner, outer }: FunnelInput, drawn: readonly DrawnWard[]) {
  const { x: across, y: up } = edgesOf(plotFrame);
  const days = [...inner.places, ...outer.places, ...drawn].map((one) => one.days);
  const range = days.length === 0 ? ([0, 1] as const) : ([Math.min(...days), Math.max(...days)] as const);
  const most = Math.max(target * 2, ...drawn.map(({ rate }) => rate));
  const widest = Math.max(0, ...inner.places.map(({ upper }) => upper));
  const rateTicks = ticksTo(Math.max(most, Math.min(widest, most * 2.5)), 5);
  const top = rateTicks.at(-1) ?? 1;
  // Room for half a mark, so that none covers the axis.
  const x = linearScale(range, [across[0] + 10, across[1]]);
  return { x, y: linearScale([0, top], up), top, rateTicks, dayTicks: ticksWithin(range, 6) };
}

function positionWords(position: FunnelPosition, { inner, outer }: FunnelInput): string {
  if (position === "inside") return `inside the ${inner.name} limits`;
  return `outside the ${position === "outside-inner" ? inner.name : outer.name} limits`;
}

function textOf(ward: DrawnWard, input: FunnelInput): string {
  const counts = `${figureText(ward.events ?? 0, 0)} ${input.eventsUnit} in ${figureText(ward.days, 0)} ${input.daysUnit}`;
  const limits =
    ward.lower === null || ward.upper === null
      ? ""
      : `, ${input.inner.name} limits ${figureText(ward.lower, 2)} to ${figureText(ward.upper, 2)}`;
  const place = `${positionWords(ward.position, input)}${notFinalText(ward.open)}`;
  return `${ward.name}: ${counts}, ${figureText(ward.rate, 2)} ${input.unit}${limits}, ${place}`;
}

/** Labels are placed for the wards outside the limits first, then for those with the most days. */
function pointsOf(wards: readonly DrawnWard[], texts: readonly string[], { x, y }: FunnelScales): SvgNode[] {
  const [left, right] = edgesOf(plotFrame).x;
  const [bottom, top] = edgesOf(plotFrame).y;
  const byWeight = wards
    .map((ward, at) => ({ ward, at }))
    .sort((a, b) => weightOf(a.ward) - weightOf(b.ward) || b.ward.days - a.ward.days);
  const places = placeLabels(
    byWeight.map(({ ward }) => ({ x: x(ward.days), y: y(ward.rate), names: labelsOf(ward) })),
    { left, right: right + 6, top: top - 16, bottom },
  );
  const placeOf = new Map(byWeight.map(({ at }, place) => [at, places[place] ?? null]));
  return wards.map((ward, at) => {
    const isOutside = ward.position !== "inside";
    const color = isOutside ? ink.signal : ink.words;
    const place = placeOf.get(at);
    const look = { bold: isOutside, color, halo: true };
    const label = place ? [words(place.name, [place.x, place.y], { ...look, anchor: place.anchor })] : [];
    const isHollow = ward.open !== undefined;
    const point = mark(shapes[ward.position], [x(ward.days), y(ward.rate)], color, { isHollow });
    return focusable(texts[at] ?? "", point, ...label);
  });
}

/** The name with its counts, events over days; where that has no room, the name alone. */
function labelsOf({ name, events, days }: DrawnWard): string[] {
  const short = shortName(name, longestName);
  return [`${short} ${figureText(events ?? 0, 0)}/${figureText(days, 0)}`, short];
}

function weightOf({ position }: DrawnWard): number {
  return ["outside-outer", "outside-inner", "inside"].indexOf(position);
}
