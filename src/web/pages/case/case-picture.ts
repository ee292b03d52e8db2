import type { Day } from "../../../../shared/day.ts";
import type { Chart } from "../../../charts/chart.ts";
import { type DayPictureInput, dayPicture, type PictureLane, type PictureSpan } from "../../../charts/day-picture.ts";
import { dayAfter, dayWords } from "../../parts/words.ts";
import { caseText } from "../../texts/case.ts";
import { kindText } from "../../texts/words.ts";
import type { Case } from "./case-rows.ts";
import { cultureMarks, signMarks } from "./picture-marks.ts";

/** The days of a picture, in order. */
export interface PictureDays {
  readonly days: readonly Day[];
  /** The place of a day; null when it is not drawn. */
  at(day: string): number | null;
}

/** The days around a culture as a chart, in the words of the page. */
export function casePicture(detail: Case, wardCode: (wardId: number) => string, id: string): Chart {
  const days = daysOf(detail);
  const { determination, picture } = detail;
  const date = determination?.event?.dateOfEvent ?? null;
  const at = date === null ? null : days.at(date);
  const input: DayPictureInput = {
    id,
    title: caseText("pictureTitle", { from: dayWords(picture.first), to: dayWords(picture.last) }),
    sentence: caseText("pictureWords"),
    dayLabel: caseText("dayColumn"),
    days: days.days.map((day) => ({ number: String(Number(day.slice(8))), month: monthOf(day), words: dayWords(day) })),
    marked:
      date === null || at === null
        ? null
        : { day: at, word: caseText("dateOfEvent"), text: caseText("dateOfEventOn", { day: dayWords(date) }) },
    lanes: [
      lane("laneWard", wardSpans(detail, days, wardCode)),
      lane("laneCatheter", catheterSpans(detail, days)),
      { ...lane("laneSigns", []), marks: signMarks(detail, days) },
      { ...lane("laneCultures", []), marks: cultureMarks(detail, days) },
      lane("lanePeriods", periodSpans(detail, days)),
    ],
  };
  return dayPicture(input);
}

/** The days that are drawn: those of the picture, without the empty ones before the first record but one. */
function daysOf(detail: Case): PictureDays {
  const { last } = detail.picture;
  const days: Day[] = [];
  for (let day = firstDrawn(detail); day <= last; day = dayAfter(day, 1)) days.push(day);
  const places = new Map<string, number>(days.map((day, at) => [day, at]));
  return { days, at: (day) => places.get(day) ?? null };
}

function firstDrawn({ picture, determination }: Case): Day {
  const { first, wards, catheters, signs, specimens } = picture;
  const window = determination?.event?.window;
  const begins = [
    ...[...wards, ...catheters].map((one) => one.first ?? first),
    ...[...signs, ...specimens].map(({ day }) => day),
    ...(window ? [window.first] : []),
  ].sort();
  const before = begins[0] === undefined ? first : dayAfter(begins[0], -1);
  return before < first || before > picture.last ? first : before;
}

const monthFormat = new Intl.DateTimeFormat("en-US", { timeZone: "UTC", month: "short" });

function monthOf(day: Day): string {
  return monthFormat.format(new Date(day));
}

function lane(label: "laneWard" | "laneCatheter" | "laneSigns" | "laneCultures" | "lanePeriods", spans: PictureSpan[]) {
  return { label: caseText(label), spans, marks: [] } satisfies PictureLane;
}

interface Lasting {
  readonly first: Day | null;
  readonly last: Day | null;
  readonly what: string;
  readonly look: PictureSpan["look"];
}

/** A span cut to the days that are drawn; none when it lies outside of them. */
function spanOf({ first, last, what, look }: Lasting, { days }: PictureDays): PictureSpan[] {
  const [begin, end] = [days[0], days.at(-1)];
  if (!begin || !end || (first !== null && first > end) || (last !== null && last < begin)) return [];
  const opensBefore = first === null || first < begin;
  const opensAfter = last === null || last > end;
  const from = opensBefore ? 0 : days.indexOf(first);
  const to = opensAfter ? days.length - 1 : days.indexOf(last);
  return [{ from, to, look, word: what, text: spanWords({ first, last, what, look }), opensBefore, opensAfter }];
}

function spanWords({ first, last, what }: Lasting): string {
  if (first !== null && last !== null) {
    const said = { what, from: dayWords(first) };
    return first === last ? caseText("spanDay", said) : caseText("spanDays", { ...said, to: dayWords(last) });
  }
  if (first !== null) return caseText("spanFrom", { what, from: dayWords(first) });
  return last === null ? caseText("spanOpen", { what }) : caseText("spanUntil", { what, to: dayWords(last) });
}

function wardSpans({ picture }: Case, days: PictureDays, wardCode: (wardId: number) => string): PictureSpan[] {
  return picture.wards.flatMap(({ wardId, setting, first, last }) => {
    const ward = wardCode(wardId);
    const isInpatient = setting === "inpatient";
    const what = isInpatient ? ward : caseText("notInpatient", { ward });
    return spanOf({ first, last, what, look: isInpatient ? "place" : "outline" }, days);
  });
}

function catheterSpans({ picture }: Case, days: PictureDays): PictureSpan[] {
  return picture.catheters.flatMap(({ kind, first, last, latestLast }) => {
    const what = kindText(kind);
    const known = spanOf({ first, last, what, look: "bar" }, days);
    if (last === null || latestLast === null || latestLast <= last) return known;
    const doubt = {
      first: dayAfter(last, 1),
      last: latestLast,
      what: caseText("maybe", { what }),
      look: "maybe",
    } as const;
    return [...known, ...spanOf(doubt, days)];
  });
}

function periodSpans({ determination }: Case, days: PictureDays): PictureSpan[] {
  const event = determination?.event;
  if (!event) return [];
  const { window, repeatTimeframe, bloodstreamPeriod } = event;
  const { usableFrom, ...all } = window;
  const early =
    usableFrom > all.first
      ? [{ first: all.first, last: dayAfter(usableFrom, -1), what: caseText("windowUnused"), look: "outline" as const }]
      : [];
  const spans: Lasting[] = [
    ...early,
    { first: usableFrom, last: all.last, what: caseText("window"), look: "hatched" },
    { ...repeatTimeframe, what: caseText("timeframe"), look: "dotted" },
    ...(bloodstreamPeriod ? [{ ...bloodstreamPeriod, what: caseText("bloodstream"), look: "barred" as const }] : []),
  ];
  return spans.flatMap((span) => spanOf(span, days));
}
