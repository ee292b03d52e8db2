import { inserters, insertionPlaces } from "../../../shared/catheter-words.ts";
import {
  amountText,
  differingTexts,
  digitsOf,
  type FigureKey,
  figureKeys,
  figureWords,
  notFinalWords,
} from "../../../shared/figure-words.ts";
import type { CompletenessItem, Figure, MonthReport, WardFigures } from "../../../shared/month-report.ts";
import { inSentence } from "../../../shared/vocabulary.ts";
import { canonicalText, lasting } from "./canonical-text.ts";
import { signedItems } from "./completeness.ts";

/** One thing that is no longer as it was signed. */
export interface MonthDifference {
  /** null: all wards together, or the report as a whole. */
  readonly wardId: number | null;
  readonly ward: string | null;
  /** null: something else than a figure. */
  readonly figure: FigureKey | null;
  readonly what: string;
  readonly signed: string | number | null;
  readonly now: string | number | null;
}

type Value = string | number | null;

/**
 * What a month says now that it did not say when it was signed, the report as a whole first, then ward by ward, then all
 * wards together. Nothing when the contents are the same. A report of some wards only has no total to compare.
 */
export function monthDifferences(signed: MonthReport, now: MonthReport): MonthDifference[] {
  const whole = reportWords.flatMap(([what, say]) =>
    changed({ ward: null, figure: null, what }, say(signed), say(now)),
  );
  const codes = [...new Set([...signed.wards, ...now.wards].map(({ code }) => code))];
  const find = (report: MonthReport, code: string) => report.wards.find((ward) => ward.code === code);
  const wards = codes.flatMap((code) => wardDifferences(find(signed, code), find(now, code)));
  const lines = completenessDifferences(signed, now);
  const both = signed.total.figures.length > 0 && now.total.figures.length > 0;
  return [
    ...whole,
    ...lines,
    ...wards,
    ...(both ? figureDifferences(null, signed.total.figures, now.total.figures) : []),
  ];
}

/** What was missing or doubtful otherwise, or by other lines, when the month was signed, by kind and ward. */
function completenessDifferences(signed: MonthReport, now: MonthReport): MonthDifference[] {
  const [before, after] = [signedItems(signed.completeness), signedItems(now.completeness)];
  if (before === null || after === null) return [];
  const keyOf = ({ kind, ward }: CompletenessItem) => JSON.stringify([kind, ward]);
  const keys = [...new Set([...before, ...after].map(keyOf))];
  return keys.flatMap((key) => {
    const [a, b] = [before, after].map((items) => items.find((item) => keyOf(item) === key));
    if (canonicalText(a ?? {}) === canonicalText(b ?? {})) return [];
    const code = (a ?? b)?.ward ?? null;
    const ward = [...signed.wards, ...now.wards].find((one) => one.code === code) ?? null;
    const none = (a ?? b)?.lines.length === 0 ? "no such item" : "no such line";
    return [difference({ ward, figure: null, what: "Data quality" }, a?.sentence ?? none, b?.sentence ?? none)];
  });
}

const reportWords: readonly (readonly [string, (report: MonthReport) => Value])[] = [
  ["Facility", ({ facility }) => facility],
  ["Baseline of infections", ({ baselines }) => baselines.infections?.name ?? null],
  ["Baseline of catheter-days", ({ baselines }) => baselines.catheterDays?.name ?? null],
  ["Target for the SIR", ({ goal }) => goal],
  ["Rule of limits", ({ limits }) => limits],
];

const wardWords: readonly (readonly [string, (ward: WardFigures) => Value])[] = [
  ["Name", ({ name }) => name],
  ["Type of unit", ({ type }) => type],
  ["Definitions of infections", ({ edition }) => edition],
  ["Denominators", ({ denominators }) => denominators],
  [
    "Where catheters were inserted",
    ({ insertions }) => counts(insertions.places.map((p) => [p.place && insertionPlaces[p.place], p.count])),
  ],
  [
    "Who inserted catheters",
    ({ insertions }) => counts(insertions.inserters.map((p) => [p.inserter && inserters[p.inserter], p.count])),
  ],
];

function counts(list: readonly (readonly [string | null, number])[]): string {
  return list.map(([word, count]) => `${inSentence(word ?? "not recorded")} ${count}`).join(", ") || "none";
}

function wardDifferences(signed: WardFigures | undefined, now: WardFigures | undefined): MonthDifference[] {
  const ward = signed ?? now;
  if (!ward) return [];
  if (!signed || !now) {
    const said = (there: WardFigures | undefined) => (there ? "in the month" : "not in the month");
    return changed({ ward, figure: null, what: "Unit" }, said(signed), said(now));
  }
  const words = wardWords.flatMap(([what, say]) => changed({ ward, figure: null, what }, say(signed), say(now)));
  return [...words, ...figureDifferences(ward, signed.figures, now.figures)];
}

function figureDifferences(
  ward: WardFigures | null,
  signed: readonly Figure[],
  now: readonly Figure[],
): MonthDifference[] {
  const [before, after] = [lasting(signed), lasting(now)];
  return figureKeys.flatMap((key) => {
    const [a, b] = [before, after].map((list) => list.find((figure) => figure.key === key));
    if (!a || !b || isSame(a, b)) return [];
    const said = { ward, figure: key, what: figureWords[key].label };
    return [difference(said, ...sidesOf(key, a, b))];
  });
}

/** A text that was signed before open cultures were counted says nothing of them, which is no difference. */
function isSame(signed: Figure, now: Figure): boolean {
  const open = signed.open === undefined ? undefined : now.open;
  return canonicalText(signed) === canonicalText({ ...now, open });
}

/** Both sides as they are printed; what they are made of where the value is the same and something behind it is not. */
function sidesOf(key: FigureKey, a: Figure, b: Figure): [Value, Value] {
  const side = ({ open }: Figure, text: string | null): Value => {
    if (open != null) return `${text}, ${notFinalWords(open)}`;
    return text === null || text.trim() === "" || Number.isNaN(Number(text)) ? text : Number(text);
  };
  if (a.value === b.value) return [side(a, parts(a)), side(b, parts(b))];
  if (a.value === null || b.value === null) return [side(a, textOf(key, a)), side(b, textOf(key, b))];
  const [was, is] = differingTexts(key, a.value, b.value);
  return [side(a, was), side(b, is)];
}

function textOf(key: FigureKey, { value, reason }: Figure): string | null {
  return value === null ? reason : value.toFixed(digitsOf(key));
}

/** What a figure is made of, where its value has not changed and something behind it has. */
function parts({ value, numerator, denominator, reason }: Figure): string {
  const amount = (one: number | null) => (one === null ? "none" : amountText(one));
  const made = denominator === null ? amount(numerator) : `${amount(numerator)} of ${amount(denominator)}`;
  return value === null ? `${reason} (${made})` : made;
}

interface Place {
  readonly ward: WardFigures | null;
  readonly figure: FigureKey | null;
  readonly what: string;
}

function changed(place: Place, signed: Value, now: Value): MonthDifference[] {
  return signed === now ? [] : [difference(place, signed, now)];
}

function difference({ ward, figure, what }: Place, signed: Value, now: Value): MonthDifference {
  return { wardId: ward?.wardId ?? null, ward: ward?.code ?? null, figure, what, signed, now };
}
